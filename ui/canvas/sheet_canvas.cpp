#include "ui/canvas/sheet_canvas.h"

#include <QPainter>
#include <algorithm>
#include <utility>
#include <variant>

#include "core/drawing/pick.h"
#include "ui/look/text.h"
#include "ui/look/theme.h"

namespace shoulderline {

namespace {

constexpr double kRoundSheet = 6.0;  // millimetres of the sheet
constexpr double kPickPixels = 5.0;

// What an op covers, roughly; enough to find a thing on the sheet.
struct InkExtent {
    QRectF area;
    void include(Vec2 p) {
        const QRectF at(p.x - 0.01, p.y - 0.01, 0.02, 0.02);
        area = area.isNull() ? at : area.united(at);
    }
    void operator()(const Stroke& op) {
        for (const Vec2 p : op.points) {
            include(p);
        }
    }
    void operator()(const Fill& op) {
        for (const Vec2 p : op.points) {
            include(p);
        }
    }
    void operator()(const ArcOp& op) {
        include({op.centre.x - op.radius, op.centre.y - op.radius});
        include({op.centre.x + op.radius, op.centre.y + op.radius});
    }
    void operator()(const TextOp&) {}
    void operator()(const shoulderline::DimensionOp&) {}
    void operator()(const BeginGroup&) {}
    void operator()(const EndGroup&) {}
};

}  // namespace

SheetCanvas::SheetCanvas(QWidget* parent) : Canvas(parent) {}

void SheetCanvas::show(Sheet sheet) {
    const bool isOther = sheet.size != sheet_.size;
    sheet_ = std::move(sheet);
    if (isOther) {
        fit();
    }
    sceneChanged();
}

void SheetCanvas::setChosen(std::vector<Subject> chosen) {
    chosen_ = std::move(chosen);
    update();
}

void SheetCanvas::setChanged(std::vector<Subject> changed) {
    changed_ = std::move(changed);
    update();
}

void SheetCanvas::setHint(const QString& hint) {
    hint_ = hint;
    update();
}

bool SheetCanvas::isChosen(const Subject& subject) const {
    return std::find(chosen_.begin(), chosen_.end(), subject) != chosen_.end();
}

QRectF SheetCanvas::sceneRect() const {
    return QRectF(0, 0, sheet_.size.x, sheet_.size.y)
        .adjusted(-kRoundSheet, -kRoundSheet, kRoundSheet, kRoundSheet);
}

void SheetCanvas::paintScene(QPainter& painter) {
    const Theme theme = Theme::of(palette());
    if (sheet_.ops.empty()) {
        painter.setPen(theme.softInk);
        painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap, hint_);
        return;
    }
    SheetLook look;
    look.colours = {.ink = theme.ink,
                    .softInk = theme.softInk,
                    .chosen = theme.teal,
                    .changed = theme.amber,
                    .tint = theme.paper,
                    .chosenTint = theme.tealTint,
                    .changedTint = theme.amberTint};
    look.chosen = chosen_;
    look.changed = changed_;
    look.leastWidth = 1.0 / scale();
    painter.translate(toScreen(QPointF(0, 0)));
    painter.scale(scale(), scale());
    painter_.paint(painter, sheet_, look);
}

std::vector<CanvasItem> SheetCanvas::makeItems() const {
    std::vector<CanvasItem> items;
    std::vector<std::pair<std::size_t, InkExtent>> open;
    for (const Op& op : sheet_.ops) {
        if (const auto* begin = std::get_if<BeginGroup>(&op)) {
            items.push_back({qt(begin->name), {}, {}, begin->subject});
            open.push_back({items.size() - 1, {}});
        } else if (std::holds_alternative<EndGroup>(op) && !open.empty()) {
            const InkExtent inner = open.back().second;
            items[open.back().first].area = inner.area;
            open.pop_back();
            if (!open.empty() && !inner.area.isNull()) {
                open.back().second.area = open.back().second.area.united(inner.area);
            }
        } else if (!open.empty()) {
            std::visit(open.back().second, op);
        }
    }
    std::erase_if(items, [](const CanvasItem& item) {
        return item.name.isEmpty() || item.area.isNull() ||
               (item.subject.kind != SubjectKind::Part && item.subject.kind != SubjectKind::Joint);
    });
    return items;
}

std::optional<Subject> SheetCanvas::subjectAt(QPointF screen) const {
    const QPointF at = toScene(screen);
    return shoulderline::subjectAt(sheet_, {at.x(), at.y()}, kPickPixels / scale());
}

}  // namespace shoulderline
