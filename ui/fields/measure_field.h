#pragma once

#include <QLineEdit>
#include <QPointer>

#include "core/measure/result.h"
#include "ui/fields/field_note.h"

namespace shoulderline {

// What the fields for figures have in common. Enter, or leaving the field, commits what was
// changed by hand; Esc brings the old text back; what is not understood is refused with a sentence
// beside the field, and the old value is kept. Up and Down step by one, Page Up and Page Down by
// eight, the wheel by one while the field has the focus. Tab into it selects all.
class MeasureField : public QLineEdit {
    Q_OBJECT
  public:
    explicit MeasureField(QWidget* parent = nullptr);
    ~MeasureField() override;

    // A word at the left edge that says how the figure came to be; empty for none.
    void setStateWord(const QString& word);
    [[nodiscard]] const QString& stateWord() const { return stateWord_; }
    // The sentence last refused with, while it is shown.
    [[nodiscard]] QString refusal() const;

  protected:
    enum class Manner { Typed, Step };
    // Takes the text over, or says why not.
    virtual Result<void> commitText(const QString& text, Manner manner) = 0;
    // The text at rest, and the text to edit.
    [[nodiscard]] virtual QString restingText() const = 0;
    [[nodiscard]] virtual QString editingText() const { return restingText(); }
    // The text that so many steps lead to.
    [[nodiscard]] virtual Result<QString> stepped(int steps) const = 0;
    // What a text being typed comes to, where that is worth showing; else empty.
    [[nodiscard]] virtual QString preview(const QString&) const { return {}; }
    virtual void burstEnded() {}

    // Shows the value anew, unless it is being changed by hand.
    void refresh();

    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

  private:
    void commit(bool isLeaving);
    void step(int steps);
    void putBack();
    void refuse(const Error& error);
    void hideNote();
    void showPreview();

    QPointer<FieldNote> note_;
    QString refusal_;
    QString stateWord_;
    int wheelLeft_ = 0;
    bool hasJustEntered_ = false;
};

}  // namespace shoulderline
