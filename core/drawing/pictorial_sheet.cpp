#include <algorithm>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/parts_list.h"
#include "core/drawing/pictorial.h"
#include "core/drawing/pulled_apart.h"
#include "core/drawing/scales.h"
#include "core/drawing/title_block.h"
#include "core/measure/length_text.h"

namespace shoulderline {

namespace {

constexpr double kBetweenPictures = 12.0;
constexpr double kRoomForNumbers = 16.0;  // round the picture pulled apart
constexpr double kCaption = 8.0;          // under a picture
constexpr double kPictureCaptionHeight = 3.5;
constexpr double kLeastWhole = 0.39;  // scale of the piece assembled to that of it pulled apart

// Where the top left corners of the list, the piece and the pulled apart piece go, and the room
// they take.
struct Places {
    Vec2 list;
    Vec2 whole;
    Vec2 apart;
    Vec2 size;
};

// Two ways: the list over the piece, beside both the picture pulled apart; or all three in a row.
Places placesFor(Vec2 list, Vec2 whole, Vec2 apart, bool inRow) {
    if (inRow) {
        const double x = list.x + kBetweenPictures + whole.x + kBetweenPictures;
        const double height = std::max({list.y, whole.y, apart.y});
        return {{0.0, 0.0},
                {list.x + kBetweenPictures, (height - whole.y) / 2.0},
                {x, (height - apart.y) / 2.0},
                {x + apart.x, height}};
    }
    const double column = std::max(list.x, whole.x);
    const double height = std::max(list.y + kBetweenPictures + whole.y, apart.y);
    return {{0.0, 0.0},
            {(column - whole.x) / 2.0, list.y + kBetweenPictures},
            {column + kBetweenPictures, (height - apart.y) / 2.0},
            {column + kBetweenPictures + apart.x, height}};
}

}  // namespace

Sheet pictorialSheet(const Piece& piece,
                     const ResolvedPiece& resolved,
                     const SheetFrame& frame,
                     const TextMetrics& metrics) {
    const Vec3 over = resolved.bounds.size();
    const View view = pictorialView();
    const Picture whole = pictureOf(resolved, view);
    const Picture apart =
        pictureOf(resolved, view, pulledApart(resolved, pictureClearance(resolved)));
    std::vector<Op> list = frame.withList ? partsList(piece, resolved, metrics) : std::vector<Op>();
    const Rect listBounds = boundsOf(list, metrics);

    const Rect space = drawingSpace(frame.paper);
    const Vec2 room = space.size() - Vec2{8.0, 8.0};
    const std::vector<double> scales =
        frame.scale > 0.0 ? std::vector<double>{frame.scale} : viewScales(piece.unit);
    const Vec2 numbers{2.0 * kRoomForNumbers, 2.0 * kRoomForNumbers};
    double scale = scales.front();
    double wholeScale = scale;
    Places places;
    const auto fits = [&] {
        for (const bool inRow : {false, true}) {
            places = placesFor(listBounds.size(),
                               whole.bounds.size() * wholeScale + Vec2{0.0, kCaption},
                               apart.bounds.size() * scale + numbers + Vec2{0.0, kCaption},
                               inRow);
            if (places.size.x <= room.x && places.size.y <= room.y) {
                return true;
            }
        }
        return false;
    };
    const auto choose = [&] {
        for (const double candidate : scales) {
            for (const double smaller : scales) {
                scale = candidate;
                wholeScale = smaller;
                if (smaller <= candidate && smaller >= kLeastWhole * candidate && fits()) {
                    return;
                }
            }
        }
    };
    choose();

    Sheet sheet;
    sheet.title = piece.name + ", pictorial view";
    sheet.size = frame.paper;
    sheet.lines = LineGroup::Medium;
    TitleBlock block = titleBlock("assembled and pulled apart", piece, frame);
    block.quantity = std::to_string(resolved.parts.size()) + " parts of " +
                     std::to_string(partKinds(resolved).size()) + " kinds, " +
                     std::to_string(resolved.joints.size()) + " joints";
    block.material = "see the list of parts";
    setSizeOverAll(block, over, piece);
    block.scale = scaleText(scale);
    sheet.ops = frameAndTitle(frame.paper, block, metrics);

    const Vec2 corner = (space.min + space.max - places.size) * 0.5;
    const auto cornerOf = [](const Picture& picture, double at) {
        return Vec2{picture.bounds.min.x, -picture.bounds.max.y} * at;
    };
    const auto caption = [&](const Picture& picture, double at, double below, const char* text) {
        const Vec2 middle{(picture.bounds.min.x + picture.bounds.max.x) / 2.0 * at,
                          -picture.bounds.min.y * at + below + kPictureCaptionHeight};
        return TextOp{middle,
                      std::string(text) + ", " + scaleText(at),
                      kPictureCaptionHeight,
                      Align::Centre,
                      false,
                      false};
    };
    move(list, corner + places.list - listBounds.min);
    append(sheet.ops, std::move(list));
    std::vector<Op> drawn = pictureOps(resolved, whole, wholeScale);
    drawn.push_back(caption(whole, wholeScale, kCaption - kPictureCaptionHeight, "assembled"));
    move(drawn, corner + places.whole - cornerOf(whole, wholeScale));
    append(sheet.ops, std::move(drawn));
    drawn = pictureOps(resolved, apart, scale);
    append(drawn, partNumbers(resolved, apart, scale, metrics));
    // Under the lowest of its numbers.
    const double lowest = boundsOf(drawn, metrics).max.y + apart.bounds.min.y * scale;
    drawn.push_back(caption(apart,
                            scale,
                            std::min(lowest, kRoomForNumbers) + kCaption - kPictureCaptionHeight,
                            "pulled apart"));
    move(drawn,
         corner + places.apart + Vec2{kRoomForNumbers, kRoomForNumbers} - cornerOf(apart, scale));
    append(sheet.ops, std::move(drawn));
    return sheet;
}

}  // namespace shoulderline
