#include <algorithm>
#include <cmath>

#include "core/drawing/mortise_rows.h"
#include "core/drawing/part_sections.h"
#include "core/drawing/turned_mouth.h"
#include "core/measure/length_text.h"

namespace shoulderline {

namespace {

bool inOnePlane(double a, double b) {
    constexpr double kSame = 0.001;  // mm
    return std::abs(a - b) <= kSame;
}

// The sizes of one mortise: along the mouth's side from the face side or edge, and into the wood. A
// bored one by its middle and its diameter; of one that leans the section is no circle, and its
// note tells its bit. How deep one that leans goes along itself is in its note too.
class MortiseSizes {
  public:
    MortiseSizes(const Piece& piece,
                 const ResolvedPiece& resolved,
                 const ResolvedPart& part,
                 const MortiseSolid& mortise)
        : piece_(piece),
          mortise_(mortise),
          isTurned_(turnedMouthOf(resolved, part, mortise).has_value()),
          isBored_(isBored(resolved, mortise)),
          isLeaningBore_(isLeaningBore(resolved, mortise)),
          isDepthAlongIt_(isDepthAlongIt(resolved, part, mortise)),
          width_(resolved.joints[mortise.joint].mortise.width.value.mm()),
          size_{part.thickness.value.mm(), part.width.value.mm()},
          rect_(acrossOf(setOutBox(mortise))) {}

    [[nodiscard]] std::vector<SectionSize> sizes() const {
        const bool opensUpOrDown =
            mortise_.face == Face::FaceEdge || mortise_.face == Face::BackEdge;
        const Face deepSide =
            opensUpOrDown ? Face::FaceSide
                          : (mortise_.face == Face::FaceSide ? Face::BackEdge : Face::FaceEdge);
        const double from = opensUpOrDown ? rect_.min.x : rect_.min.y;
        const double to = opensUpOrDown ? rect_.max.x : rect_.max.y;
        const double middle = (from + to) / 2.0;
        std::vector<SectionSize> sizes;
        if (isBored_) {
            sizes.push_back(sized(0.0, middle, mortise_.face, "bore centre"));
        } else if (!isTurned_) {  // else it is cut askew, and its note tells how it is set out
            sizes.push_back(sized(0.0, from, mortise_.face, "from face"));
            sizes.push_back(sized(from, to, mortise_.face, "mortise width"));
        }
        if (isBored_ && !isLeaningBore_) {
            sizes.push_back(sized(
                middle - width_ / 2.0, middle + width_ / 2.0, mortise_.face, "bore diameter"));
            sizes.back().size.text.insert(0, "\u2300");
        }
        if (!mortise_.isThrough && !isDepthAlongIt_) {
            sizes.push_back(opensUpOrDown
                                ? sized(rect_.min.y, rect_.max.y, deepSide, "mortise depth")
                                : sized(rect_.min.x, rect_.max.x, deepSide, "mortise depth"));
        }
        return sizes;
    }

  private:
    // In z and y.
    static Rect acrossOf(const Box& box) {
        return {{box.min.z, box.min.y}, {box.max.z, box.max.y}};
    }
    // How far inside the section's side the feature lies.
    [[nodiscard]] double depthFrom(Face side) const {
        switch (side) {
            case Face::FaceEdge:
                return rect_.min.y;
            case Face::BackEdge:
                return size_.y - rect_.max.y;
            case Face::FaceSide:
                return rect_.min.x;
            case Face::BackSide:
                return size_.x - rect_.max.x;
            case Face::StartEnd:
            case Face::FarEnd:
                break;
        }
        return 0.0;
    }
    [[nodiscard]] SectionSize sized(double from, double to, Face side, std::string of) const {
        const double depth = depthFrom(side);
        const bool isFromReference = of == "from face" || of == "bore centre";
        return {{from,
                 to,
                 isFromReference ? 0.0 : depth,
                 depth,
                 letterLength(Length::mm(to - from), piece_.style),
                 to - from,
                 std::move(of),
                 {SubjectKind::Joint, mortise_.joint},
                 0},
                side};
    }

    const Piece& piece_;
    const MortiseSolid& mortise_;
    bool isTurned_;
    bool isBored_;
    bool isLeaningBore_;
    bool isDepthAlongIt_;
    double width_;
    Vec2 size_;
    Rect rect_;
};

}  // namespace

std::vector<SectionSize> sizesIn(const PartSection& section,
                                 const Piece& piece,
                                 const ResolvedPiece& resolved,
                                 const ResolvedPart& part) {
    std::vector<SectionSize> sizes;
    for (const std::size_t i : section.mortises) {
        for (SectionSize& size : MortiseSizes(piece, resolved, part, part.mortises[i]).sizes()) {
            const bool isThere = std::any_of(sizes.begin(), sizes.end(), [&](const SectionSize& s) {
                return s.side == size.side && inOnePlane(s.size.from, size.size.from) &&
                       inOnePlane(s.size.to, size.size.to);
            });
            if (!isThere) {
                sizes.push_back(std::move(size));
            }
        }
    }
    return sizes;
}

}  // namespace shoulderline
