#pragma once

#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "ui/document/document.h"

namespace shoulderline {

// The driest and the dampest air that the piece stands in over a year, by moisture content or by
// temperature and humidity; tells what they come to while they are typed. Nothing typed: the usual
// air.
class AirDialog final : public QDialog {
    Q_OBJECT
  public:
    explicit AirDialog(Document& document, QWidget* parent = nullptr);

  private:
    struct Fields {
        QLineEdit* moisture = nullptr;
        QLineEdit* celsius = nullptr;
        QLineEdit* humidity = nullptr;
    };
    [[nodiscard]] Fields addAir(QLayout& layout, const QString& title, const RoomAir& air);
    [[nodiscard]] static RoomAir airIn(const Fields& fields);
    [[nodiscard]] Climate climate() const { return {airIn(dry_), airIn(damp_)}; }
    void foresee();
    void take(const Climate& climate);

    Document& document_;
    Fields dry_;
    Fields damp_;
    QLabel* told_ = nullptr;
    QPushButton* take_ = nullptr;
};

}  // namespace shoulderline
