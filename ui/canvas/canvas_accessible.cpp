#include "ui/canvas/canvas_accessible.h"

#include <QAccessibleWidget>
#include <QPointer>
#include <vector>

#include "ui/canvas/canvas.h"

namespace shoulderline {

namespace {

// One thing on a canvas, by its number among the items.
class ItemAccessible final : public QAccessibleInterface, public QAccessibleActionInterface {
  public:
    ItemAccessible(Canvas* canvas, std::size_t index) : canvas_(canvas), index_(index) {}

    [[nodiscard]] bool isValid() const override {
        return canvas_ != nullptr && index_ < canvas_->items().size();
    }
    [[nodiscard]] QObject* object() const override { return nullptr; }
    [[nodiscard]] QAccessibleInterface* parent() const override {
        return QAccessible::queryAccessibleInterface(canvas_);
    }
    [[nodiscard]] QAccessibleInterface* child(int) const override { return nullptr; }
    [[nodiscard]] QAccessibleInterface* childAt(int, int) const override { return nullptr; }
    [[nodiscard]] int childCount() const override { return 0; }
    [[nodiscard]] int indexOfChild(const QAccessibleInterface*) const override { return -1; }
    [[nodiscard]] QString text(QAccessible::Text kind) const override {
        if (!isValid()) {
            return {};
        }
        const CanvasItem& item = canvas_->items()[index_];
        return kind == QAccessible::Name          ? item.name
               : kind == QAccessible::Description ? item.description
                                                  : QString();
    }
    void setText(QAccessible::Text, const QString&) override {}
    [[nodiscard]] QRect rect() const override {
        if (!isValid()) {
            return {};
        }
        const QRect area = canvas_->toScreen(canvas_->items()[index_].area).toAlignedRect();
        return area.translated(canvas_->mapToGlobal(QPoint()));
    }
    [[nodiscard]] QAccessible::Role role() const override { return QAccessible::Graphic; }
    [[nodiscard]] QAccessible::State state() const override {
        QAccessible::State state;
        state.selectable = state.focusable = true;
        if (isValid()) {
            state.selected = canvas_->isChosen(canvas_->items()[index_].subject);
            state.focused = canvas_->hasFocus() && canvas_->currentItem() == index_;
        }
        return state;
    }
    void* interface_cast(QAccessible::InterfaceType type) override {
        return type == QAccessible::ActionInterface ? static_cast<QAccessibleActionInterface*>(this)
                                                    : nullptr;
    }
    [[nodiscard]] QStringList actionNames() const override { return {pressAction()}; }
    void doAction(const QString&) override {
        if (isValid()) {
            const Subject subject = canvas_->items()[index_].subject;
            canvas_->pick(subject);
        }
    }
    [[nodiscard]] QStringList keyBindingsForAction(const QString&) const override { return {}; }

  private:
    QPointer<Canvas> canvas_;
    std::size_t index_;
};

class CanvasAccessible final : public QAccessibleWidget {
  public:
    explicit CanvasAccessible(Canvas* canvas)
        : QAccessibleWidget(canvas, QAccessible::Canvas), canvas_(canvas) {}
    ~CanvasAccessible() override {
        for (const QAccessible::Id id : ids_) {
            QAccessible::deleteAccessibleInterface(id);
        }
    }
    CanvasAccessible(const CanvasAccessible&) = delete;
    CanvasAccessible& operator=(const CanvasAccessible&) = delete;

    // The items come first, then the widgets that lie on the canvas.
    [[nodiscard]] int childCount() const override {
        return itemCount() + QAccessibleWidget::childCount();
    }
    [[nodiscard]] QAccessibleInterface* child(int index) const override {
        if (index < 0) {
            return nullptr;
        }
        if (index >= itemCount()) {
            return QAccessibleWidget::child(index - itemCount());
        }
        while (ids_.size() <= static_cast<std::size_t>(index)) {
            ids_.push_back(
                QAccessible::registerAccessibleInterface(new ItemAccessible(canvas_, ids_.size())));
        }
        return QAccessible::accessibleInterface(ids_[static_cast<std::size_t>(index)]);
    }
    [[nodiscard]] int indexOfChild(const QAccessibleInterface* one) const override {
        for (int i = 0; i < itemCount(); ++i) {
            if (child(i) == one) {
                return i;
            }
        }
        const int widget = QAccessibleWidget::indexOfChild(one);
        return widget < 0 ? widget : widget + itemCount();
    }
    [[nodiscard]] QAccessibleInterface* childAt(int x, int y) const override {
        for (int i = childCount() - 1; i >= 0; --i) {
            if (child(i)->rect().contains(x, y)) {
                return child(i);
            }
        }
        return nullptr;
    }

  private:
    [[nodiscard]] int itemCount() const { return static_cast<int>(canvas_->items().size()); }

    Canvas* canvas_;
    mutable std::vector<QAccessible::Id> ids_;
};

}  // namespace

QAccessibleInterface* makeCanvasAccessible(const QString&, QObject* object) {
    auto* canvas = qobject_cast<Canvas*>(object);
    return canvas == nullptr ? nullptr : new CanvasAccessible(canvas);
}

}  // namespace shoulderline
