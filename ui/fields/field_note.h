#pragma once

#include <QLabel>
#include <QPointer>

namespace shoulderline {

// A line of text beside a field: why it was refused, or what a typed expression comes to. Floats
// over the window, so that nothing moves when it comes.
class FieldNote final : public QLabel {
    Q_OBJECT
  public:
    enum class Kind { Refusal, Preview };

    // Shows `text` under `field`, in the field's window.
    static FieldNote* show(QWidget& field, FieldNote* note, const QString& text, Kind kind);

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    explicit FieldNote(QWidget* window);
    void place(const QWidget& field);
    Kind kind_ = Kind::Refusal;
};

}  // namespace shoulderline
