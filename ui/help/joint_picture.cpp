#include "ui/help/joint_picture.h"

#include <QFile>
#include <QPainter>
#include <QUrlQuery>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/lettering_metrics.h"
#include "core/drawing/pictorial.h"
#include "core/drawing/pulled_apart.h"
#include "core/resolve/resolve.h"
#include "core/storage/piece_text.h"
#include "ui/look/text.h"
#include "ui/painting/sheet_painter.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

QString wordIn(const QUrlQuery& query, const QString& key) {
    return query.queryItemValue(key).replace(u'_', u' ');
}

std::optional<Piece> exampleOf(const QUrl& what, const QDir& examples) {
    QFile file(examples.filePath(what.path().section(u'/', -1) + u".shoulder"_s));
    if (!file.open(QIODevice::ReadOnly)) {
        return std::nullopt;
    }
    const Result<Piece> read = readPiece(file.readAll().toStdString());
    if (!read) {
        return std::nullopt;
    }
    Piece piece = *read;
    const QUrlQuery query(what);
    const auto kind = fromWord<JointKind>(utf8(wordIn(query, u"kind"_s)));
    const auto feature = fromWord<JointFeature>(utf8(wordIn(query, u"feature"_s)));
    for (JointStatement& joint : piece.joints) {
        if (!joint.kind) {
            joint.kind = kind;
            if (feature) {
                joint.features.insert(*feature);
            }
        }
    }
    return piece;
}

}  // namespace

QImage jointPicture(const QUrl& what,
                    const QDir& examples,
                    const Resources& resources,
                    const QColor& ink,
                    int width,
                    double ratio) {
    const std::optional<Piece> piece = exampleOf(what, examples);
    if (!piece) {
        return {};
    }
    const ResolvedPiece resolved = resolve(*piece, resources.rules, resources.workshop);
    if (!resolved.troubles.empty() || resolved.parts.empty()) {
        return {};
    }
    constexpr double kMargin = 4.0;  // millimetres of the picture
    const Picture picture =
        pictureOf(resolved, pictorialView(), pulledApart(resolved, pictureClearance(resolved)));
    Sheet sheet;
    sheet.lines = LineGroup::Medium;
    sheet.ops = pictureOps(resolved, picture, 0.5);
    const Rect bounds = boundsOf(sheet.ops, LetteringMetrics());
    move(sheet.ops, Vec2{kMargin, kMargin} - bounds.min);
    sheet.size = bounds.size() + Vec2{2 * kMargin, 2 * kMargin};

    const double scale = width / sheet.size.x;
    QImage image(QSizeF(width * ratio, sheet.size.y * scale * ratio).toSize(),
                 QImage::Format_ARGB32_Premultiplied);
    image.setDevicePixelRatio(ratio);
    image.fill(Qt::transparent);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(scale, scale);
    SheetLook look;
    look.colours.ink = look.colours.softInk = ink;
    look.leastWidth = 1.0 / (scale * ratio);
    SheetPainter().paint(painter, sheet, look);
    return image;
}

}  // namespace shoulderline
