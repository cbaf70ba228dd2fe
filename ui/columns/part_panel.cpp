#include "ui/columns/part_panel.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "core/check/figure_text.h"
#include "core/resolve/end_plane.h"
#include "core/resolve/part_set_up.h"
#include "ui/columns/air_dialog.h"
#include "ui/columns/section.h"
#include "ui/look/label.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

PartPanel::PartPanel(Document& document, Prompts& prompts, QWidget* parent)
    : QWidget(parent), document_(document) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(5);
    title_ = new Label(this);
    title_->setWordWrap(true);
    QFont bold = title_->font();
    bold.setWeight(QFont::DemiBold);
    bold.setPointSizeF(bold.pointSizeF() * 1.08);
    title_->setFont(bold);
    stock_ = makeSoftLabel({}, 0.92, this);
    stock_->setWordWrap(true);
    sizes_ = new QGridLayout;
    sizes_->setContentsMargins(0, 4, 0, 4);
    sizes_->setHorizontalSpacing(10);
    sizes_->setVerticalSpacing(1);
    sizes_->setColumnStretch(0, 1);
    sizes_->setColumnMinimumWidth(2, 54);
    moves_ = new TextButton({}, TextButton::Kind::Quiet, this);
    moves_->setWordWrap(true);
    QFont small = moves_->font();
    small.setPointSizeF(small.pointSizeF() * 0.92);
    moves_->setFont(small);
    moves_->setObjectName(u"movement"_s);
    connect(moves_, &TextButton::clicked, this, [this] {
        AirDialog dialog(document_, window());
        dialog.exec();
    });
    mainJoint_ = new TextButton({}, TextButton::Kind::Plain, this);
    mainJoint_->setBold(true);
    mainJoint_->setWordWrap(true);
    gauges_ = new Gauges(document_, this);
    joints_ = new QVBoxLayout;
    joints_->setSpacing(0);
    form_ = new PartForm(document_, prompts, this);
    swing_ = new SwingForm(document_, prompts, this);
    layout->addWidget(title_);
    layout->addWidget(stock_);
    layout->addLayout(sizes_);
    why_ = new WhyBox(document_, this);
    layout->addWidget(why_);
    layout->addWidget(moves_);
    layout->addSpacing(4);
    layout->addWidget(mainJoint_);
    layout->addWidget(gauges_);
    layout->addLayout(joints_);
    setUpsHeading_ = new SectionHeading(tr("Set-ups"), this);
    layout->addWidget(setUpsHeading_);
    setUps_ = new Label(this);
    setUps_->setWordWrap(true);
    setUps_->setTextFormat(Qt::PlainText);
    setUps_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    layout->addWidget(setUps_);
    cautions_ = makeSoftLabel({}, 0.9, this);
    cautions_->setWordWrap(true);
    cautions_->setTextFormat(Qt::PlainText);
    cautions_->setAccessibleName(tr("cautions"));
    layout->addWidget(cautions_);
    layout->addWidget(new SectionHeading(tr("As stated"), this));
    layout->addWidget(form_);
    layout->addWidget(swing_);
}

void PartPanel::refresh() {
    const std::optional<std::size_t> chosen = document_.chosenPart();
    if (!chosen) {
        return;
    }
    const ResolvedPart& part = document_.resolved().parts[*chosen];
    title_->setText(qt(part.name));
    QString wood = qt(part.stock);
    for (const Stock& stock : document_.piece().stocks) {
        if (stock.name == part.stock) {
            wood += u", "_s + qt(stock.species).toLower() + u", "_s + qt(wordFor(stock.cut));
        }
    }
    stock_->setText(wood);
    showSizes(part);
    showMovement(*chosen);
    showJoints(*chosen);
    showSetUps(part);
    form_->show(part.stated);
    swing_->show(part.assembly);
}

std::vector<PartPanel::SizeTold> PartPanel::sizesOf(const ResolvedPart& part) {
    const bool hasTenons = part.startTenon.mm() > 0.0 || part.farTenon.mm() > 0.0;
    const auto told = [](const QString& name, const Size& size) {
        return SizeTold{name, size.value, size.state, &size};
    };
    const Extent arris = alongFaceArris(part);
    const Length between = Length::mm(arris.max - arris.min);
    const bool isSlanted = !nearlyEqual(between, part.shoulderLength.value, kLengthTolerance);
    std::vector<SizeTold> all{told(!hasTenons  ? tr("length")
                                   : isSlanted ? tr("over its shoulders")
                                               : tr("shoulder to shoulder"),
                                   part.shoulderLength)};
    if (hasTenons && isSlanted) {
        all.push_back({tr("shoulder to shoulder, face side"), between, SizeState::ByRule});
    }
    if (hasTenons) {
        all.push_back({tr("length over tenons"), part.length(), SizeState::ByRule});
    }
    all.push_back(told(tr("width"), part.width));
    all.push_back(told(tr("thickness"), part.thickness));
    if (part.number > 0) {
        all.push_back({tr("gap between"), part.gap, SizeState::ByRule});
    }
    return all;
}

void PartPanel::addSizeRow(const SizeTold& told) {
    QWidget* label = nullptr;
    if (told.size != nullptr) {
        auto* button = new TextButton(told.name, TextButton::Kind::Plain, this);
        button->setToolTip(tr("Why it is so"));
        connect(button, &TextButton::clicked, this, [this, name = told.name] {
            whyOf_ = name;
            refresh();
        });
        label = button;
    } else {
        label = new Label(told.name, this);
        label->setContentsMargins(2, 0, 0, 0);
    }
    auto* figure = new Label(this);
    QFont bold = figure->font();
    bold.setWeight(QFont::DemiBold);
    figure->setFont(bold);
    auto* state = makeSoftLabel({}, 0.88, this);
    const auto row = static_cast<int>(sizeRows_.size());
    sizes_->addWidget(label, row, 0, Qt::AlignLeft);
    sizes_->addWidget(figure, row, 1, Qt::AlignRight);
    sizes_->addWidget(state, row, 2);
    for (QWidget* one : {label, static_cast<QWidget*>(figure), static_cast<QWidget*>(state)}) {
        one->show();
    }
    sizeRows_.push_back({told.name, figure, state});
}

// Each size with its state; those that have reasons of their own tell them when their name is
// clicked.
void PartPanel::showSizes(const ResolvedPart& part) {
    const std::vector<SizeTold> all = sizesOf(part);
    const bool areSame =
        std::equal(sizeRows_.begin(),
                   sizeRows_.end(),
                   all.begin(),
                   all.end(),
                   [](const SizeRow& row, const SizeTold& told) { return row.name == told.name; });
    if (!areSame) {
        clearLayout(*sizes_);
        sizeRows_.clear();
        for (const SizeTold& told : all) {
            addSizeRow(told);
        }
    }
    const SizeTold* why = &all.front();
    for (std::size_t i = 0; i < all.size(); ++i) {
        sizeRows_[i].figure->setText(qt(document_.shown(all[i].length)));
        sizeRows_[i].state->setText(qt(wordFor(all[i].state)));
        if (all[i].size != nullptr && all[i].name == whyOf_) {
            why = &all[i];
        }
    }
    why_->show(why->name, *why->size);
}

// How the tools are set for what is cut in it for no joint; nothing of a part without.
void PartPanel::showSetUps(const ResolvedPart& part) {
    const RuleBook& rules = document_.resolved().rules;
    const std::vector<PartSetUp> setUps = partSetUpsOf(part, document_.piece().style);
    QStringList lines;
    for (const PartSetUp& one : setUps) {
        lines << qt(partSetUpText(one, rules));
    }
    QStringList cautions;
    for (const std::string& one : cautionsFor(setUps, rules)) {
        cautions << qt(one);
    }
    setUps_->setText(lines.join(u"\n"_s));
    setUps_->setAccessibleName(setUps_->text());
    cautions_->setText(cautions.join(u"\n"_s));
    for (QWidget* one :
         {setUpsHeading_, static_cast<QWidget*>(setUps_), static_cast<QWidget*>(cautions_)}) {
        one->setVisible(!setUps.empty());
    }
}

// How far it moves across its grain over the year; leads to the air that it stands in.
void PartPanel::showMovement(std::size_t part) {
    const PartMovement& movement = document_.movement().parts[part];
    const auto figure = [](double mm) { return qt(figureText(mm, 2)) + u"\u00a0mm"_s; };
    if (!movement.width) {
        moves_->setText(tr("movement over the year: no published figure for its wood"));
        return;
    }
    moves_->setText(movement.thickness
                        ? tr("moves %1 in width and %2 in thickness over the year")
                              .arg(figure(*movement.width), figure(*movement.thickness))
                        : tr("moves %1 in width over the year").arg(figure(*movement.width)));
    moves_->setToolTip(qt(document_.movement().season.source));
}

void PartPanel::showJoints(std::size_t part) {
    const ResolvedPiece& resolved = document_.resolved();
    std::optional<std::size_t> first;
    std::vector<std::size_t> others;
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        const ResolvedJoint& joint = resolved.joints[i];
        const bool isItsTenon = joint.tenoned == part && joint.hasTenon();
        if (isItsTenon && !first) {
            first = i;
        } else if (joint.tenoned == part || joint.mortised == part) {
            others.push_back(i);
        }
    }
    mainJoint_->setVisible(first.has_value());
    gauges_->setVisible(first.has_value());
    const auto nameOf = [&](std::size_t joint) {
        const ResolvedJoint& one = resolved.joints[joint];
        return one.tenoned == part ? tr("into %1").arg(qt(resolved.parts[one.mortised].name))
                                   : tr("takes %1").arg(qt(resolved.parts[one.tenoned].name));
    };
    if (first) {
        mainJoint_->setText(
            tr("tenon into %1").arg(qt(resolved.parts[resolved.joints[*first].mortised].name)));
        mainJoint_->disconnect(this);
        connect(mainJoint_, &TextButton::clicked, this, [this, joint = *first] {
            document_.chooseJoint(joint);
        });
        gauges_->show(*first);
    }
    std::vector<std::pair<std::size_t, QString>> told;
    for (const std::size_t joint : others) {
        told.emplace_back(joint, nameOf(joint));
    }
    if (told == jointsTold_) {
        return;
    }
    jointsTold_ = std::move(told);
    clearLayout(*joints_);
    for (const auto& [index, name] : jointsTold_) {
        const std::size_t joint = index;
        auto* link = new TextButton(name, TextButton::Kind::Action, this);
        link->setBold(false);
        link->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
        connect(link, &TextButton::clicked, this, [this, joint] { document_.chooseJoint(joint); });
        joints_->addWidget(link);
        link->show();
    }
}

}  // namespace shoulderline
