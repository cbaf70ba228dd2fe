#pragma once

#include <QPointF>
#include <QRectF>
#include <QString>
#include <QWidget>
#include <optional>
#include <vector>

#include "core/drawing/sheet.h"

namespace shoulderline {

// One thing on a canvas that may be chosen: for the keyboard and for assistive tools.
struct CanvasItem {
    QString name;         // "front post, left"
    QString description;  // its sizes
    QRectF area;          // in scene coordinates
    Subject subject;
};

// A view of a scene in true millimetres (y down) that one can move about in. The wheel scrolls,
// with Ctrl it zooms about the pointer; the middle button, or Space and the left one, drag; + - 0
// and the arrow keys do the same. Tab goes from item to item and after the last one on to the next
// widget; a click or Enter picks.
class Canvas : public QWidget {
    Q_OBJECT
  public:
    explicit Canvas(QWidget* parent = nullptr);

    // Pixels to a millimetre; and the same for the size that things have on the screen's glass.
    [[nodiscard]] double scale() const { return scale_; }
    [[nodiscard]] double trueScale() const;
    void fit();
    void zoomBy(double factor, QPointF about);
    void zoomBy(double factor);
    void showTrueSize();
    [[nodiscard]] bool isFitted() const { return isFitted_; }

    [[nodiscard]] const std::vector<CanvasItem>& items() const;
    [[nodiscard]] QRectF toScreen(const QRectF& area) const;
    [[nodiscard]] QPointF toScreen(QPointF point) const;
    [[nodiscard]] QPointF toScene(QPointF point) const;
    [[nodiscard]] std::optional<std::size_t> currentItem() const { return currentItem_; }
    virtual void pick(const Subject& subject);
    [[nodiscard]] virtual bool isChosen(const Subject& subject) const = 0;

  Q_SIGNALS:
    void scaleChanged();
    void picked(const shoulderline::Subject& subject);
    void nothingPicked();

  protected:
    [[nodiscard]] virtual QRectF sceneRect() const = 0;
    virtual void paintScene(QPainter& painter) = 0;
    [[nodiscard]] virtual std::vector<CanvasItem> makeItems() const = 0;
    [[nodiscard]] virtual std::optional<Subject> subjectAt(QPointF screen) const = 0;
    virtual void hover(QPointF) {}
    virtual void leave() {}
    virtual void moved() {}  // scale or offset are others now
    // Scrolls, and scales to `scale`, so that a point of the scene lies there on the widget.
    void holdAt(QPointF scene, QPointF screen, double scale);
    // Whether the pointer scrolls the scene, held down.
    [[nodiscard]] bool isScrolling() const { return isDragging_; }
    void makeCurrent(std::optional<std::size_t> item);
    // Called when the scene is another: fits it again if it was fitted, forgets the items.
    void sceneChanged();

    bool event(QEvent* event) override;
    bool focusNextPrevChild(bool next) override;
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    void setView(double scale, QPointF offset);
    void scrollBy(QPointF pixels);

    double scale_ = 1.0;
    QPointF offset_;  // of the scene's origin on the widget
    bool isFitted_ = true;
    bool isSpaceDown_ = false;
    bool isDragging_ = false;
    bool hasMoved_ = false;
    QPointF pressedAt_;
    QPointF lastAt_;
    mutable std::optional<std::vector<CanvasItem>> items_;
    std::optional<std::size_t> currentItem_;
};

}  // namespace shoulderline
