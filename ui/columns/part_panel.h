#pragma once

#include <QGridLayout>
#include <QLabel>
#include <QVBoxLayout>
#include <QWidget>
#include <utility>
#include <vector>

#include "ui/columns/gauges.h"
#include "ui/columns/part_form.h"
#include "ui/columns/swing_form.h"
#include "ui/columns/why_box.h"
#include "ui/document/document.h"
#include "ui/look/text_button.h"

namespace shoulderline {

// The chosen part: what it comes to, its joints with the proportions of the first, and what is
// stated.
class PartPanel final : public QWidget {
    Q_OBJECT
  public:
    PartPanel(Document& document, Prompts& prompts, QWidget* parent = nullptr);
    void refresh();

  private:
    // A size as it is told, and its row.
    struct SizeTold {
        QString name;
        Length length;
        SizeState state;
        const Size* size = nullptr;  // where it tells why
    };
    struct SizeRow {
        QString name;
        QLabel* figure = nullptr;
        QLabel* state = nullptr;
    };
    [[nodiscard]] static std::vector<SizeTold> sizesOf(const ResolvedPart& part);
    void addSizeRow(const SizeTold& told);
    void showSizes(const ResolvedPart& part);
    void showMovement(std::size_t part);
    void showJoints(std::size_t part);
    void showSetUps(const ResolvedPart& part);

    Document& document_;
    QLabel* title_;
    QLabel* stock_;
    QGridLayout* sizes_;
    std::vector<SizeRow> sizeRows_;
    QVBoxLayout* joints_;
    std::vector<std::pair<std::size_t, QString>> jointsTold_;
    TextButton* moves_;
    TextButton* mainJoint_;
    Gauges* gauges_;
    WhyBox* why_;
    QString whyOf_;
    PartForm* form_;
    SwingForm* swing_;
    QLabel* setUps_;
    QLabel* cautions_;
    QWidget* setUpsHeading_;
};

}  // namespace shoulderline
