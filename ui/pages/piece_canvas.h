#pragma once

#include <QPolygonF>
#include <array>
#include <future>
#include <optional>
#include <vector>

#include "core/drawing/piece_view.h"
#include "core/drawing/rods.h"
#include "ui/canvas/canvas.h"
#include "ui/document/document.h"
#include "ui/look/afterglow.h"
#include "ui/pages/rod_bubble.h"

namespace shoulderline {

// The piece in front, side and plan elevation, in projection, framed by its rods: heights at the
// left, widths beneath the front, depths beneath the side. A line of a rod takes a value when it is
// clicked, and follows the pointer when it is dragged: the piece at once, the drag one step to
// undo, Escape takes it back.
class PieceCanvas final : public Canvas {
    Q_OBJECT
  public:
    // Room for figures beneath the rods: so many rows, each so many pixels high.
    static constexpr int kRows = 3;
    static constexpr double kRowHeight = 17.0;
    // Narrower than this there is no room for the rods' names.
    static constexpr double kNarrow = 620.0;
    static constexpr double kStationRow = 18.0;  // above a view of what swings

    PieceCanvas(Document& document, Afterglow& glow, QWidget* parent = nullptr);

    [[nodiscard]] bool isChosen(const Subject& subject) const override;
    void pick(const Subject& subject) override;
    // Where a line of a rod lies on the widget; for tests and for the bubble.
    [[nodiscard]] QPointF rodLineAt(RodKind kind, std::size_t line) const;
    void openBubble(RodKind kind, std::size_t line);
    [[nodiscard]] const Rod& rod(RodKind kind) const {
        return rods_[static_cast<std::size_t>(kind)];
    }

  protected:
    [[nodiscard]] QRectF sceneRect() const override;
    void paintScene(QPainter& painter) override;
    [[nodiscard]] std::vector<CanvasItem> makeItems() const override;
    [[nodiscard]] std::optional<Subject> subjectAt(QPointF screen) const override;
    void hover(QPointF screen) override;
    void leave() override;
    void moved() override;
    void showEvent(QShowEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;

  private:
    enum Which : std::size_t { Front, Side, Plan };
    struct LineRef {
        RodKind kind = RodKind::Heights;
        std::size_t line = 0;
        friend bool operator==(const LineRef&, const LineRef&) = default;
    };
    // A line of a rod that is taken hold of, and what was there when it was.
    struct RodDrag {
        LineRef line;
        QPointF grabbed;  // where the pointer was, on the widget
        Rod rod;
        Piece piece;
        ResolvedPiece resolved;
        QPointF held;  // where the origin of the view beside the rod stays, on the widget
        bool hasBegun = false;
        bool wasFitted = false;
        double at = 0.0;  // where the line is now, along the rod
    };
    // The view that a rod goes along.
    [[nodiscard]] static Which viewOf(RodKind kind) {
        return kind == RodKind::Depths ? Side : Front;
    }
    void begin();
    void update();
    void finish();
    [[nodiscard]] bool isCurrent() const { return generation_ == document_.generation(); }
    void markChanged();
    void layOut();
    void beginDrag();
    void dragBy(QPointF way);
    void keepHold();
    void endDrag();
    bool takeDragBack();
    [[nodiscard]] QPointF place(std::size_t view, Vec2 point) const;            // to the scene
    [[nodiscard]] QPolygonF outline(std::size_t view, std::size_t part) const;  // on the screen
    [[nodiscard]] QRectF rodRect(RodKind kind) const;                           // in the scene
    [[nodiscard]] double along(const Rod& rod, double at) const;                // on the screen
    [[nodiscard]] std::optional<LineRef> rodLineNear(QPointF screen) const;
    [[nodiscard]] QString figure(const Rod& rod, const RodLine& line) const;
    [[nodiscard]] bool isMarked(std::size_t part) const;

    void paintTints(QPainter& painter, std::size_t view) const;
    void paintLines(QPainter& painter, std::size_t view) const;
    void paintRod(QPainter& painter, const Rod& rod) const;
    void paintRodLabels(QPainter& painter, const Rod& rod) const;
    void paintLabelsBeneath(QPainter& painter, const Rod& rod) const;
    void paintLabelsBeside(QPainter& painter, const Rod& rod) const;
    void paintLabel(QPainter& painter,
                    const Rod& rod,
                    std::size_t line,
                    const QRectF& room,
                    Qt::Alignment alignment) const;
    [[nodiscard]] int rankOf(const Rod& rod, std::size_t line) const;
    void paintHover(QPainter& painter) const;
    void paintViewNames(QPainter& painter) const;
    void paintStations(QPainter& painter, std::size_t view) const;

    Document& document_;
    Afterglow& glow_;
    RodBubble* bubble_;
    int generation_ = -1;
    std::future<std::array<Elevation, 3>> coming_;  // of the piece that the document has now
    std::array<Elevation, 3> views_;
    std::array<QPointF, 3> origins_;  // of each view's plane, in the scene
    std::array<Rod, 3> rods_;
    std::array<std::vector<bool>, 3> drives_;  // whether a rod's line takes a value
    double margin_ = 1.0;  // millimetres of the scene that one pixel takes when fitted
    QRectF scene_;
    std::optional<RodDrag> drag_;
    std::optional<LineRef> hovered_;
    std::optional<std::size_t> hoveredPart_;
    std::vector<bool> changedParts_;
};

}  // namespace shoulderline
