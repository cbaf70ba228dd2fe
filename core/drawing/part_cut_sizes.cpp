#include "core/drawing/part_cut_sizes.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/drawing/part_faces.h"

namespace shoulderline {

namespace {

constexpr double kSameSize = 0.001;  // mm, as kLengthTolerance
constexpr int kCircleSides = 48;

bool same(double a, double b) {
    return std::abs(a - b) <= kSameSize;
}

bool isKerf(const ResolvedCut& cut) {
    return cut.joint && cut.kind == CutKind::Notch && isEnd(cut.face);
}

bool opensOn(const ResolvedCut& cut, Face face) {
    // A saw kerf goes through both cheeks of its tenon.
    const bool throughCheeks = isKerf(cut) && (face == Face::FaceSide || face == Face::BackSide);
    return cut.face == face || throughCheeks || (cut.isThrough && oppositeOf(cut.face) == face);
}

void addLoop(const std::vector<Vec2>& points,
             bool isVisible,
             int solid,
             std::vector<ViewEdge>& edges) {
    for (std::size_t i = 0; i < points.size(); ++i) {
        edges.push_back(
            {points[i], points[(i + 1) % points.size()], isVisible, solid, static_cast<int>(i)});
    }
}

std::vector<Vec2> circleIn(const Rect& rect) {
    const Vec2 centre = (rect.min + rect.max) * 0.5;
    const double radius = rect.size().x / 2;
    std::vector<Vec2> points;
    for (int i = 0; i < kCircleSides; ++i) {
        const double angle = 2 * std::numbers::pi * i / kCircleSides;
        points.push_back(centre + Vec2{std::cos(angle), std::sin(angle)} * radius);
    }
    return points;
}

// Alike but for their place along the part.
bool isAlike(const ResolvedCut& a, const ResolvedCut& b) {
    const Vec3 sizeA = a.box.size();
    const Vec3 sizeB = b.box.size();
    return a.kind == b.kind && a.face == b.face && a.isThrough == b.isThrough && a.note == b.note &&
           same(sizeA.x, sizeB.x) && same(sizeA.y, sizeB.y) && same(sizeA.z, sizeB.z) &&
           same(a.box.min.y, b.box.min.y) && same(a.box.min.z, b.box.min.z);
}

// The outline of what is left on past the ends, drawn as part of the body.
void addHornEdges(const ResolvedPart& part, const PartView& view, std::vector<ViewEdge>& edges) {
    const Box body = part.bodyBox();
    const auto add = [&](double from, double to) {
        const Rect rect =
            view.toPlane(Box{{from, body.min.y, body.min.z}, {to, body.max.y, body.max.z}});
        addLoop({rect.min, {rect.max.x, rect.min.y}, rect.max, {rect.min.x, rect.max.y}},
                true,
                0,
                edges);
    };
    if (isEnd(view.face)) {
        return;
    }
    if (part.startHorn > kLengthTolerance) {
        add(-part.startHorn.mm(), 0.0);
    }
    if (part.farHorn > kLengthTolerance) {
        add(body.max.x, body.max.x + part.farHorn.mm());
    }
}

class CutWriter {
  public:
    CutWriter(const ResolvedPart& part,
              const PartView& view,
              const Piece& piece,
              Subject subject,
              ViewSizes& sizes)
        : part_(part), view_(view), piece_(piece), subject_(subject), sizes_(sizes) {}

    void write() {
        std::vector<std::vector<const ResolvedCut*>> rows;
        for (const ResolvedCut& cut : part_.cuts) {
            if (!isSetOutOn(part_, cut, view_.face) || isKerf(cut)) {
                continue;
            }
            const auto row = std::find_if(
                rows.begin(), rows.end(), [&](const auto& r) { return isAlike(*r.front(), cut); });
            if (row == rows.end()) {
                rows.push_back({&cut});
            } else {
                row->push_back(&cut);
            }
        }
        for (const auto& row : rows) {
            if (!isEnd(view_.face)) {
                placeAlong(row);
            }
            note(row);
        }
        noteHorns();
    }

  private:
    [[nodiscard]] std::string shown(double mm) const {
        // These call-outs are long: they keep to the first unit where sizes are told in two.
        LengthStyle style = piece_.style;
        style.withOther = false;
        return showLength(Length::mm(mm), style);
    }
    [[nodiscard]] int acrossAxis() const {
        return view_.face == Face::FaceSide || view_.face == Face::BackSide ? 1 : 2;
    }

    void along(double from, double to, double depth, const char* of) {
        sizes_.along.push_back({from,
                                to,
                                same(from, 0.0) ? 0.0 : depth,
                                depth,
                                shown(to - from),
                                to - from,
                                of,
                                subject_,
                                0,
                                same(from, 0.0) && std::string_view(of) != "cut length"});
    }

    void placeAlong(const std::vector<const ResolvedCut*>& row) {
        const double length = part_.shoulderLength.value.mm();
        for (const ResolvedCut* cut : row) {
            const Rect rect = view_.toPlane(cut->box);
            if (cut->kind == CutKind::Bore) {
                const double centre = cut->box.centre().x;
                // A hole in a tenon is placed from the shoulder that it is next to.
                const bool isPastFar = centre > length;
                along(isPastFar ? length : std::min(0.0, centre),
                      isPastFar ? centre : std::max(0.0, centre),
                      (rect.min.y + rect.max.y) / 2,
                      "bore centre");
                continue;
            }
            // One in a tenon is placed from the shoulder that it is next to.
            if (cut->box.min.x >= length - kSameSize || cut->box.max.x <= kSameSize) {
                const bool isFar = cut->box.min.x >= length - kSameSize;
                along(isFar ? length : cut->box.max.x,
                      isFar ? cut->box.min.x : 0.0,
                      rect.min.y,
                      "cut from the shoulder");
                along(cut->box.min.x, cut->box.max.x, rect.min.y, "cut length");
                continue;
            }
            if (cut->box.min.x > kSameSize) {
                along(0.0, cut->box.min.x, rect.min.y, "cut from end");
            }
            if (cut->box.max.x < length - kSameSize) {
                along(std::max(0.0, cut->box.min.x), cut->box.max.x, rect.min.y, "cut length");
            }
        }
    }

    // Said once, on the face side.
    void noteHorns() {
        if (view_.face != Face::FaceSide) {
            return;
        }
        const double length = part_.shoulderLength.value.mm();
        const double middle = part_.width.value.mm() / 2;
        const auto add = [&](Length horn, double end, double way) {
            if (horn > kLengthTolerance) {
                NeededNote note;
                note.subject = subject_;
                note.target = view_.toPlane(Vec3{end + way * horn.mm() / 2, middle, 0.0});
                note.lines = {"horn " + shown(horn.mm()), "left on, cut off after glue-up"};
                sizes_.notes.push_back(std::move(note));
            }
        };
        add(part_.startHorn, 0.0, -1.0);
        add(part_.farHorn, length, 1.0);
    }

    // "bore 3/8, through", "groove 1/4 wide, 3/8 deep".
    [[nodiscard]] std::string sectionText(const ResolvedCut& cut) const {
        const int across = acrossAxis();
        const int into = isEnd(view_.face) ? 0 : (across == 1 ? 2 : 1);
        const Vec3 size = cut.box.size();
        const bool isBore = cut.kind == CutKind::Bore;
        const double wide = isEnd(view_.face) ? size.y : size[across];
        std::string text(wordFor(cut.kind));
        text += isBore ? " \u2300" + shown(wide) : " " + shown(wide) + " wide";
        text += cut.isThrough ? ", through" : ", " + shown(size[into]) + " deep";
        return text;
    }

    [[nodiscard]] std::string placeText(const ResolvedCut& cut) const {
        const bool isBore = cut.kind == CutKind::Bore;
        const Vec3 at = isBore ? cut.box.centre() : cut.box.min;
        if (isEnd(view_.face)) {
            return shown(at.y) + " from face edge, " + shown(at.z) + " from face side";
        }
        const int across = acrossAxis();
        return shown(at[across]) + " from " +
               std::string(wordFor(across == 1 ? Face::FaceEdge : Face::FaceSide));
    }

    void note(const std::vector<const ResolvedCut*>& row) {
        const ResolvedCut& cut = *row.front();
        const Rect rect = view_.toPlane(cut.box);
        NeededNote note;
        note.subject = subject_;
        note.target = (rect.min + rect.max) * 0.5;
        if (cut.kind != CutKind::Bore) {
            note.target.x = std::min(note.target.x, rect.min.x + view_.size.x / 4);
        }
        const std::string times =
            row.size() > 1 ? std::to_string(row.size()) + " \u00d7 " : std::string();
        if (!cut.note.empty()) {
            note.lines.push_back(cut.note);
        }
        note.lines.push_back(times + sectionText(cut));
        note.lines.push_back(placeText(cut));
        sizes_.notes.push_back(std::move(note));
    }

    const ResolvedPart& part_;
    const PartView& view_;
    const Piece& piece_;
    Subject subject_;
    ViewSizes& sizes_;
};

}  // namespace

void addCutEdges(const ResolvedPart& part,
                 const PartView& view,
                 int solid,
                 std::vector<ViewEdge>& edges) {
    addHornEdges(part, view, edges);
    for (const ResolvedCut& cut : part.cuts) {
        const bool opens = opensOn(cut, view.face);
        // Seen from an end, what lies in the sides is left out, as mortises are.
        if (opens || !isEnd(view.face)) {
            const Rect rect = view.toPlane(cut.box);
            const bool isRound = cut.kind == CutKind::Bore &&
                                 (cut.face == view.face || oppositeOf(cut.face) == view.face);
            addLoop(isRound ? circleIn(rect)
                            : std::vector<Vec2>{rect.min,
                                                {rect.max.x, rect.min.y},
                                                rect.max,
                                                {rect.min.x, rect.max.y}},
                    opens,
                    solid,
                    edges);
        }
        ++solid;
    }
}

void addCutSizes(const ResolvedPart& part,
                 const PartView& view,
                 const Piece& piece,
                 Subject subject,
                 ViewSizes& sizes) {
    CutWriter(part, view, piece, subject, sizes).write();
}

}  // namespace shoulderline
