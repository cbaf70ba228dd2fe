#include "ui/pages/piece_page.h"

#include <QVBoxLayout>

namespace shoulderline {

PiecePage::PiecePage(Document& document, Afterglow& glow, QWidget* parent) : BoardPage(parent) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    canvas_ = new PieceCanvas(document, glow, this);
    layout->addWidget(canvas_);
    connect(canvas_, &Canvas::picked, this, [&document](const Subject& subject) {
        if (subject.kind == SubjectKind::Part) {
            document.choosePart(subject.index);
        }
    });
    connect(
        canvas_, &Canvas::nothingPicked, this, [&document] { document.choosePart(std::nullopt); });
}

}  // namespace shoulderline
