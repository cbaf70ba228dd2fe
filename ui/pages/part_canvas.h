#pragma once

#include <optional>
#include <vector>

#include "core/resolve/outline_points.h"
#include "ui/canvas/sheet_canvas.h"
#include "ui/document/document.h"

namespace shoulderline {

// The drawing of a part, with a handle on each point of its shaped sides. A handle is taken hold of
// with the pointer, or chosen by Tab and moved by the arrow keys, with Shift by ten steps at a
// time; the piece follows at once. A drag is one step to undo, and so is a run of arrow keys;
// Escape takes a drag back.
class PartCanvas final : public SheetCanvas {
    Q_OBJECT
  public:
    explicit PartCanvas(Document& document, QWidget* parent = nullptr);

    // The drawing of the part at `part` in the piece, made at `scale`.
    void showPart(Sheet sheet, std::size_t part, double scale);
    void showNothing();
    [[nodiscard]] std::size_t handleCount() const { return handles_.size(); }
    // Where a handle lies on the widget.
    [[nodiscard]] QPointF handleAt(std::size_t handle) const;

  protected:
    void paintScene(QPainter& painter) override;
    [[nodiscard]] std::vector<CanvasItem> makeItems() const override;
    void hover(QPointF screen) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    // A point with the view that shows it: its place, and what a millimetre along its side and into
    // the wood is there, on the sheet.
    struct Handle {
        OutlinePoint point;
        Vec2 corner;  // of the body in that view
        Vec2 at;
        Vec2 alongWay;
        Vec2 inWay;
    };
    struct Drag {
        std::size_t handle = 0;
        Vec2 grabbed;  // from the handle to the pointer, on the sheet
        bool hasMoved = false;
        bool wasFitted = false;
    };
    void placeHandles();
    [[nodiscard]] std::optional<std::size_t> handleNear(QPointF screen) const;
    [[nodiscard]] std::optional<std::size_t> currentHandle() const;
    void dragTo(QPointF screen);
    void endDrag();
    void moveBy(std::size_t handle, double along, double in);
    [[nodiscard]] double stepMm() const;
    [[nodiscard]] QString told(const Handle& handle) const;

    Document& document_;
    std::optional<std::size_t> part_;
    double scaleOfSheet_ = 1.0;
    std::vector<Handle> handles_;
    std::optional<std::size_t> hovered_;
    std::optional<Drag> drag_;
};

}  // namespace shoulderline
