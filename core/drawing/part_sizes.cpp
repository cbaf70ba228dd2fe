#include "core/drawing/part_sizes.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/part_angles.h"
#include "core/drawing/part_cut_sizes.h"
#include "core/drawing/part_sections.h"
#include "core/measure/length_text.h"

namespace shoulderline {

namespace {

constexpr double kSameSize = 0.001;  // mm, as kLengthTolerance

bool same(double a, double b) {
    return std::abs(a - b) <= kSameSize;
}

// Across the face that a mortise opens on: 1 (from the face edge) or 2 (from the face side).
int acrossAxisOf(Face face) {
    return face == Face::FaceSide || face == Face::BackSide ? 1 : 2;
}

Subject jointSubject(std::size_t joint) {
    return {SubjectKind::Joint, joint};
}

class Writer {
  public:
    Writer(const PartView& view,
           const Piece& piece,
           const ResolvedPiece& resolved,
           std::size_t index,
           const SectionPlan* sections)
        : view_(view),
          piece_(piece),
          resolved_(resolved),
          part_(resolved.parts[index]),
          sections_(sections),
          subject_{SubjectKind::Part, index} {}

    ViewSizes write(bool withSection) {
        if (isEnd(view_.face)) {
            if (withSection) {
                section();
            }
            tenonsSeenFromEnd();
            mortisesInEnd();
        } else {
            if (view_.face == Face::FaceSide) {
                lengths();
            }
            for (const MortiseRow& row : rowsOn(view_.face, resolved_, part_)) {
                mortises(row);
            }
        }
        addCutSizes(part_, view_, piece_, subject_, sizes_);
        addAngleSizes(part_, view_, piece_, subject_, sizes_);
        return sizes_;
    }

  private:
    [[nodiscard]] std::string shown(double mm) const {
        return showLength(Length::mm(mm), piece_.style);
    }

    void along(double from,
               double to,
               double fromDepth,
               double toDepth,
               std::string text,
               std::string of,
               Subject subject,
               int rank = 0) {
        sizes_.along.push_back({from,
                                to,
                                fromDepth,
                                toDepth,
                                std::move(text),
                                to - from,
                                std::move(of),
                                subject,
                                rank});
    }
    void down(double from,
              double to,
              double fromDepth,
              double toDepth,
              std::string of,
              Subject subject,
              int rank = 0) {
        sizes_.down.push_back({from,
                               to,
                               fromDepth,
                               toDepth,
                               shown(to - from),
                               to - from,
                               std::move(of),
                               subject,
                               rank});
    }

    void lengths() {
        const double length = part_.shoulderLength.value.mm();
        const double over = part_.length().mm();
        const bool hasTenons = !part_.tenons.empty();
        along(0.0,
              length,
              0.0,
              0.0,
              shown(length),
              hasTenons ? "shoulder length" : "length",
              subject_,
              1);
        if (!hasTenons) {
            return;
        }
        for (const bool atStart : {true, false}) {
            std::vector<double> done;
            for (const TenonSolid& tenon : part_.tenons) {
                const bool startsHere = tenon.box.min.x < 0.0;
                const Vec3 middle = footOf(part_, tenon).centre();
                const double shoulder =
                    endAt(part_, atStart ? End::Start : End::Far, middle.y, middle.z);
                const double tip = atStart ? tenon.box.min.x : tenon.box.max.x;
                const double long_ = std::abs(tip - shoulder);
                if (startsHere != atStart || std::any_of(done.begin(), done.end(), [&](double d) {
                        return same(d, long_);
                    })) {
                    continue;
                }
                done.push_back(long_);
                const double depth = view_.toPlane(tenon.box).min.y;
                along(std::min(shoulder, tip),
                      std::max(shoulder, tip),
                      atStart ? depth : 0.0,
                      atStart ? 0.0 : depth,
                      shown(long_),
                      tenon.isHaunch ? "haunch length" : "tenon length",
                      jointSubject(tenon.joint),
                      0);
            }
        }
        const Box box = part_.overBox();
        along(box.min.x,
              box.max.x,
              depthAt(box.min.x),
              depthAt(box.max.x),
              "(" + shown(over) + ")",
              "length over all",
              subject_,
              2);
    }

    // How far under the upper side of the view the part ends at `x`: a tenon's edge, or the body's.
    [[nodiscard]] double depthAt(double x) const {
        double depth = 0.0;
        for (const TenonSolid& tenon : part_.tenons) {
            if (same(tenon.box.min.x, x) || same(tenon.box.max.x, x)) {
                depth = view_.toPlane(tenon.box).min.y;
            }
        }
        return depth;
    }

    void mortises(const MortiseRow& row) {
        const MortiseSolid& first = *row.mortises.front();
        const std::size_t count = row.mortises.size();
        const std::string times = count > 1 ? std::to_string(count) + " \u00d7 " : "";
        const double depth = view_.toPlane(first.box).min.y;
        // Of a long row the last is the freest: its first says where the row begins and what its
        // pitch is.
        const MortiseSolid& measured = row.isEven ? *row.mortises.back() : first;
        along(measured.box.min.x,
              measured.box.max.x,
              depth,
              depth,
              times + shown(measured.box.size().x),
              "mortise length",
              jointSubject(measured.joint));
        for (std::size_t i = 0; i < (row.isEven ? 1 : count); ++i) {
            const MortiseSolid& mortise = *row.mortises[i];
            along(0.0,
                  mortise.box.min.x,
                  0.0,
                  depth,
                  shown(mortise.box.min.x),
                  "from end",
                  jointSubject(mortise.joint));
            sizes_.along.back().mayRun = true;
        }
        if (row.isEven) {
            const double next = row.mortises[1]->box.min.x;
            along(first.box.min.x,
                  next,
                  depth,
                  depth,
                  pitchText(count - 1, next - first.box.min.x),
                  "pitch",
                  jointSubject(first.joint));
        }
        note(first, count);
    }

    // "4 × 3 1/2"; with what it comes to where the figure is not exact, lest the error add up.
    [[nodiscard]] std::string pitchText(std::size_t times, double pitch) const {
        const std::string one = shown(pitch);
        const std::string text = std::to_string(times) + " \u00d7 " + one;
        const bool isExact = one.find("\u2248") == std::string::npos;
        return isExact ? text : text + " (" + shown(pitch * static_cast<double>(times)) + ")";
    }

    void note(const MortiseSolid& mortise, std::size_t count) {
        const int across = acrossAxisOf(mortise.face);
        const double width = mortise.box.size()[across];
        const int into = across == 1 ? 2 : 1;
        const ResolvedPart& mate = resolved_.parts[resolved_.joints[mortise.joint].tenoned];
        const Rect mouth = view_.toPlane(mortise.box);
        const bool isLongAcross = width > mortise.box.size().x + kSameSize;
        NeededNote note;
        note.subject = jointSubject(mortise.joint);
        note.target = (mouth.min + mouth.max) * 0.5;
        note.lines.push_back((mortise.isHaunch ? "haunch, " : "") +
                             (count > 1 ? std::to_string(count) + " for " + mate.of : mate.of));
        const std::string letter =
            sections_ != nullptr ? sections_->letterOf(mortise.joint) : std::string();
        if (!letter.empty()) {
            note.lines.push_back(letter + "\u2013" + letter + ", " +
                                 (mortise.isThrough ? "through" : "blind") +
                                 toolFor(mortise, std::min(width, mortise.box.size().x)));
            sizes_.notes.push_back(std::move(note));
            return;
        }
        note.lines.push_back(shown(width) + (isLongAcross ? " across, " : " wide, ") +
                             (mortise.isThrough ? std::string("through")
                                                : shown(mortise.box.size()[into]) + " deep"));
        note.lines.push_back(shown(mortise.box.min[across]) + " from " +
                             std::string(wordFor(across == 1 ? Face::FaceEdge : Face::FaceSide)));
        sizes_.notes.push_back(std::move(note));
    }

    // ", 5/16 chisel" where the rack has one as wide as the mortise; ", 1/2 bit" for one that is
    // bored.
    [[nodiscard]] std::string toolFor(const MortiseSolid& mortise, double width) const {
        const ResolvedJoint& joint = resolved_.joints[mortise.joint];
        if (joint.kind == JointKind::Round) {
            return ", " + shown(joint.mortise.width.value.mm()) + " bit";
        }
        const bool isOnRack = std::any_of(resolved_.rack.begin(),
                                          resolved_.rack.end(),
                                          [&](Length chisel) { return same(chisel.mm(), width); });
        return isOnRack ? ", " + shown(width) + " chisel" : std::string();
    }

    // Where dimensions that stand to the right (far end) or left (start end) of an end view begin.
    [[nodiscard]] double besideDepth(const Rect& rect) const {
        return view_.face == Face::FarEnd ? view_.size.x - rect.max.x : rect.min.x;
    }
    [[nodiscard]] double belowDepth(const Rect& rect) const { return view_.size.y - rect.max.y; }

    void section() {
        along(0.0, view_.size.x, 0.0, 0.0, shown(view_.size.x), "thickness", subject_, 1);
        down(0.0, view_.size.y, 0.0, 0.0, "width", subject_, 1);
    }

    void tenonsSeenFromEnd() {
        for (const TenonSolid& tenon : part_.tenons) {
            const bool isHere = (view_.face == Face::StartEnd) == (tenon.box.min.x < 0.0);
            if (!isHere) {
                continue;
            }
            const Subject subject = jointSubject(tenon.joint);
            const Rect rect = view_.toPlane(footOf(part_, tenon));
            const double below = belowDepth(rect);
            const double beside = besideDepth(rect);
            // The face side is at the left of a far end and at the right of a start end.
            if (view_.face == Face::FarEnd) {
                along(0.0,
                      rect.min.x,
                      0.0,
                      below,
                      shown(rect.min.x),
                      "shoulder at the face side",
                      subject);
            } else {
                const double shoulder = view_.size.x - rect.max.x;
                along(rect.max.x,
                      view_.size.x,
                      below,
                      0.0,
                      shown(shoulder),
                      "shoulder at the face side",
                      subject);
            }
            if (!same(rect.size().x, view_.size.x)) {
                along(rect.min.x,
                      rect.max.x,
                      below,
                      below,
                      shown(rect.size().x),
                      "tenon thickness",
                      subject);
            }
            down(0.0, rect.min.y, 0.0, beside, "shoulder at the face edge", subject);
            if (!same(rect.size().y, view_.size.y)) {
                down(rect.min.y, rect.max.y, beside, beside, "tenon width", subject);
            }
        }
    }

    void mortisesInEnd() {
        for (const MortiseSolid& mortise : part_.mortises) {
            if (mortise.face != view_.face) {
                continue;
            }
            const Rect mouth = view_.toPlane(mortise.box);
            const Vec3 size = mortise.box.size();
            sizes_.notes.push_back({(mouth.min + mouth.max) * 0.5,
                                    {resolved_.parts[resolved_.joints[mortise.joint].tenoned].of,
                                     shown(size.z) + " thick way, " + shown(size.y) +
                                         " wide way, " + shown(size.x) + " deep",
                                     shown(mortise.box.min.z) + " from face side, " +
                                         shown(mortise.box.min.y) + " from face edge"},
                                    jointSubject(mortise.joint)});
        }
    }

    const PartView& view_;
    const Piece& piece_;
    const ResolvedPiece& resolved_;
    const ResolvedPart& part_;
    const SectionPlan* sections_;
    Subject subject_;
    ViewSizes sizes_;
};

bool isAlike(const ResolvedPiece& resolved, const MortiseSolid& a, const MortiseSolid& b) {
    const Vec3 sizeA = a.box.size();
    const Vec3 sizeB = b.box.size();
    const auto mateOf = [&](const MortiseSolid& m) -> const std::string& {
        return resolved.parts[resolved.joints[m.joint].tenoned].of;
    };
    return a.face == b.face && a.isThrough == b.isThrough && same(sizeA.x, sizeB.x) &&
           same(sizeA.y, sizeB.y) && same(sizeA.z, sizeB.z) && same(a.box.min.y, b.box.min.y) &&
           same(a.box.min.z, b.box.min.z) && mateOf(a) == mateOf(b);
}

bool isEvenlySpaced(const std::vector<const MortiseSolid*>& row) {
    if (row.size() < 3) {
        return false;
    }
    const double pitch = row[1]->box.min.x - row[0]->box.min.x;
    for (std::size_t i = 1; i + 1 < row.size(); ++i) {
        if (!same(row[i + 1]->box.min.x - row[i]->box.min.x, pitch)) {
            return false;
        }
    }
    return true;
}

}  // namespace

std::vector<MortiseRow> rowsOn(Face face, const ResolvedPiece& resolved, const ResolvedPart& part) {
    std::vector<MortiseRow> rows;
    for (const MortiseSolid& mortise : part.mortises) {
        if (mortise.face != face) {
            continue;
        }
        const auto row = std::find_if(rows.begin(), rows.end(), [&](const MortiseRow& r) {
            return isAlike(resolved, *r.mortises.front(), mortise);
        });
        if (row == rows.end()) {
            rows.push_back({{&mortise}, false});
        } else {
            row->mortises.push_back(&mortise);
        }
    }
    for (MortiseRow& row : rows) {
        std::stable_sort(row.mortises.begin(),
                         row.mortises.end(),
                         [](const MortiseSolid* a, const MortiseSolid* b) {
                             return a->box.min.x < b->box.min.x;
                         });
        row.isEven = isEvenlySpaced(row.mortises);
    }
    return rows;
}

ViewSizes sizesOn(const PartView& view,
                  const Piece& piece,
                  const ResolvedPiece& resolved,
                  std::size_t index,
                  bool withSection,
                  const SectionPlan* sections) {
    return Writer(view, piece, resolved, index, sections).write(withSection);
}

std::string finishedSize(const Piece& piece, const ResolvedPart& part) {
    const auto shown = [&](Length length) { return showLength(length, piece.style); };
    return shown(part.length()) + " \u00d7 " + shown(part.width.value) + " \u00d7 " +
           shown(part.thickness.value);
}

}  // namespace shoulderline
