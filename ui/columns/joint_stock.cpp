#include "ui/columns/joint_stock.h"

#include <QHBoxLayout>
#include <algorithm>

#include "core/resolve/small_parts.h"
#include "ui/fields/choice_box.h"
#include "ui/look/label.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

// "pin", "wedge, pin": what the joint takes.
QString wordsOf(const Document& document, std::size_t joint) {
    QStringList words;
    for (const SmallPart& small : smallPartsOf(document.piece(), document.resolved())) {
        const bool isOfJoint =
            std::find(small.joints.begin(), small.joints.end(), joint) != small.joints.end();
        if (isOfJoint && !words.contains(qt(wordFor(small.kind)))) {
            words << qt(wordFor(small.kind));
        }
    }
    return words.join(u", "_s);
}

}  // namespace

JointStock::JointStock(Document& document, QWidget* parent) : QWidget(parent), document_(document) {
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(6);
    label_ = new Label(this);
    stock_ = new ChoiceBox(this);
    stock_->setObjectName(u"smallPartStock"_s);
    stock_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    label_->setBuddy(stock_);
    layout->addWidget(label_);
    layout->addWidget(stock_, 1);
    connect(stock_, &QComboBox::activated, this, &JointStock::choose);
}

void JointStock::refresh() {
    const std::optional<std::size_t> chosen = document_.chosenJoint();
    const QString words = chosen ? wordsOf(document_, *chosen) : QString();
    setVisible(!words.isEmpty());
    if (words.isEmpty()) {
        return;
    }
    const ResolvedPiece& resolved = document_.resolved();
    const ResolvedPart& tenoned = resolved.parts[resolved.joints[*chosen].tenoned];
    const JointStatement* stated = findJointStatement(
        document_.piece(), tenoned.of, resolved.parts[resolved.joints[*chosen].mortised].of);
    label_->setText(tr("stock, %1").arg(words));
    stock_->setAccessibleName(tr("stock of the %1").arg(words));
    stock_->clear();
    stock_->addItem(tr("as %1: %2").arg(qt(tenoned.of), qt(tenoned.stock)));
    for (const Stock& one : document_.piece().stocks) {
        stock_->addItem(qt(one.name));
        if (stated != nullptr && stated->stock == one.name) {
            stock_->setCurrentIndex(stock_->count() - 1);
        }
    }
}

void JointStock::choose(int index) {
    const std::optional<std::size_t> chosen = document_.chosenJoint();
    if (!chosen) {
        return;
    }
    const ResolvedPiece& resolved = document_.resolved();
    const std::string& tenoned = resolved.parts[resolved.joints[*chosen].tenoned].of;
    const std::string& mortised = resolved.parts[resolved.joints[*chosen].mortised].of;
    const JointStatement* stated = findJointStatement(document_.piece(), tenoned, mortised);
    JointStatement joint = stated != nullptr ? *stated : JointStatement{};
    joint.tenoned = tenoned;
    joint.mortised = mortised;
    joint.stock = index <= 0 ? std::string() : utf8(stock_->itemText(index));
    static_cast<void>(document_.apply(SetJoint{std::move(joint)}));
    refresh();
}

}  // namespace shoulderline
