#pragma once

#include <functional>

#include "core/measure/length.h"
#include "core/measure/length_text.h"
#include "ui/fields/measure_field.h"

namespace shoulderline {

// A field for one length that is nothing but a length (the overlap of printed pages), read and
// shown as makers write lengths.
class LengthField final : public MeasureField {
    Q_OBJECT
  public:
    explicit LengthField(QWidget* parent = nullptr);

    void setLength(Length length, const LengthStyle& style);
    [[nodiscard]] Length length() const { return length_; }
    // The least and most that are taken, and what is said of others ("pages overlap by 5 mm to 50
    // mm").
    void setLimits(Length least, Length most, const QString& sentence);

  Q_SIGNALS:
    void lengthChanged();

  protected:
    Result<void> commitText(const QString& text, Manner manner) override;
    [[nodiscard]] QString restingText() const override;
    [[nodiscard]] Result<QString> stepped(int steps) const override;

  private:
    Length length_;
    Length least_ = -Length::mm(1e6);
    Length most_ = Length::mm(1e6);
    QString limitSentence_;
    LengthStyle style_;
};

// One step of a field that shows lengths so: the smallest fraction shown, or a millimetre.
[[nodiscard]] Length stepOf(const LengthStyle& style);

}  // namespace shoulderline
