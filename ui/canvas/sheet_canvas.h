#pragma once

#include <vector>

#include "ui/canvas/canvas.h"
#include "ui/painting/sheet_painter.h"

namespace shoulderline {

// A canvas that shows one sheet. What is chosen and what has changed is told to it.
class SheetCanvas : public Canvas {
    Q_OBJECT
  public:
    explicit SheetCanvas(QWidget* parent = nullptr);

    void show(Sheet sheet);
    void setChosen(std::vector<Subject> chosen);
    void setChanged(std::vector<Subject> changed);
    // What is said in the place of an empty sheet.
    void setHint(const QString& hint);
    [[nodiscard]] const Sheet& sheet() const { return sheet_; }
    [[nodiscard]] bool isChosen(const Subject& subject) const override;

  protected:
    [[nodiscard]] QRectF sceneRect() const override;
    void paintScene(QPainter& painter) override;
    [[nodiscard]] std::vector<CanvasItem> makeItems() const override;
    [[nodiscard]] std::optional<Subject> subjectAt(QPointF screen) const override;

  private:
    Sheet sheet_;
    SheetPainter painter_;
    QString hint_;
    std::vector<Subject> chosen_;
    std::vector<Subject> changed_;
};

}  // namespace shoulderline
