#include "core/drawing/part_sizes.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/part_angles.h"
#include "core/drawing/part_cut_sizes.h"
#include "core/drawing/part_easings.h"
#include "core/drawing/part_horns.h"
#include "core/drawing/part_joint_notes.h"
#include "core/drawing/part_sizing.h"
#include "core/measure/length_text.h"
#include "core/resolve/end_plane.h"
#include "core/resolve/face_there.h"

namespace shoulderline {

bool isSameSize(double a, double b) {
    return std::abs(a - b) <= kLengthTolerance.mm();
}

namespace {

void add(NeededSize size, const SizeWriter& writer, std::vector<NeededSize>& to) {
    const bool isThere = std::any_of(to.begin(), to.end(), [&](const NeededSize& other) {
        return isSameSize(other.from, size.from) && isSameSize(other.to, size.to);
    });
    if (isThere) {
        return;
    }
    size.value = size.to - size.from;
    if (size.text.empty()) {
        size.text = writer.shown(size.value);
    }
    to.push_back(std::move(size));
}

}  // namespace

std::string SizeWriter::shown(double mm) const {
    return letterLength(Length::mm(mm), piece.style);
}

void SizeWriter::along(NeededSize size) {
    add(std::move(size), *this, sizes.along);
}

void SizeWriter::down(NeededSize size) {
    add(std::move(size), *this, sizes.down);
}

namespace {

// How far under the upper side of the view the part ends at `x`: a tenon's edge, or the body's.
double depthAt(const SizeWriter& writer, double x) {
    double depth = 0.0;
    for (const TenonSolid& tenon : writer.part.tenons) {
        if (isSameSize(tenon.box.min.x, x) || isSameSize(tenon.box.max.x, x)) {
            depth = writer.view.toPlane(tenon.box).min.y;
        }
    }
    return depth;
}

// From its shoulder; on one out of square as long as its joint has it, so that this sheet and the
// joint's tell one length.
double lengthOf(const SizeWriter& writer, const TenonSolid& tenon, End end, double tip) {
    if (!tenon.isHaunch && endPlaneOf(writer.part.body, end)) {
        return writer.resolved.joints[tenon.joint].tenon.length.value.mm();
    }
    const Vec3 middle = footOf(writer.part, tenon).centre();
    return std::abs(tip - endAt(writer.part, end, middle.y, middle.z));
}

void addTenonLengths(SizeWriter& writer, End end) {
    const ResolvedPart& part = writer.part;
    const bool atStart = end == End::Start;
    std::vector<double> done;
    for (const TenonSolid& tenon : part.tenons) {
        const double tip = atStart ? tenon.box.min.x : tenon.box.max.x;
        const double length = lengthOf(writer, tenon, end, tip);
        const double shoulder = atStart ? tip + length : tip - length;
        const bool isDone =
            std::any_of(done.begin(), done.end(), [&](double d) { return isSameSize(d, length); });
        if ((tenon.box.min.x < 0.0) != atStart || isDone) {
            continue;
        }
        done.push_back(length);
        const double depth = writer.view.toPlane(tenon.box).min.y;
        writer.along({std::min(shoulder, tip),
                      std::max(shoulder, tip),
                      atStart ? depth : 0.0,
                      atStart ? 0.0 : depth,
                      {},
                      0.0,
                      tenon.isHaunch ? "haunch length" : "tenon length",
                      subjectOfJoint(tenon.joint)});
    }
}

}  // namespace

std::string referenceAcross(const ResolvedPart& part, int axis, double from, double to) {
    constexpr double kAside = 0.01;  // mm: off the corners of an outline
    for (const double at : {from + kAside, (from + to) / 2.0, to - kAside}) {
        if (isReferenceShapedAway(part, axis, at)) {
            return axis == 1 ? "the blank's edge" : "the blank's face";
        }
    }
    return std::string(wordFor(axis == 1 ? Face::FaceEdge : Face::FaceSide));
}

void addLengths(SizeWriter& writer) {
    const ResolvedPart& part = writer.part;
    const bool hasTenons = !part.tenons.empty();
    const ShoulderSpan span = shoulderSpan(part);
    writer.along({span.arris.min,
                  span.arris.max,
                  0.0,
                  0.0,
                  {},
                  0.0,
                  hasTenons ? "shoulder length" : "length",
                  writer.subject,
                  1});
    if (span.needsCorners) {
        const double over = part.shoulderLength.value.mm();
        writer.along({0.0,
                      over,
                      0.0,
                      0.0,
                      "(" + writer.shown(over) + ")",
                      0.0,
                      "over the corners",
                      writer.subject,
                      1});
    }
    if (!hasTenons) {
        return;
    }
    addTenonLengths(writer, End::Start);
    addTenonLengths(writer, End::Far);
    const Box box = part.overBox();
    writer.along({box.min.x,
                  box.max.x,
                  depthAt(writer, box.min.x),
                  depthAt(writer, box.max.x),
                  "(" + writer.shown(part.length().mm()) + ")",
                  0.0,
                  "length over all",
                  writer.subject,
                  2});
}

void addSectionSizes(SizeWriter& writer) {
    const Vec2 size = writer.view.size;
    switch (writer.part.section) {
        case SectionForm::Square:
            writer.along({0.0, size.x, 0.0, 0.0, {}, 0.0, "thickness", writer.subject, 1});
            writer.down({0.0, size.y, 0.0, 0.0, {}, 0.0, "width", writer.subject, 1});
            return;
        case SectionForm::Round:
            writer.along({0.0,
                          size.x,
                          size.y / 2.0,
                          size.y / 2.0,
                          writer.shownDiameter(size.x),
                          0.0,
                          "diameter",
                          writer.subject,
                          1});
            return;
        case SectionForm::Octagonal:
            writer.along({0.0,
                          size.x,
                          size.y / 2.0,
                          size.y / 2.0,
                          writer.shown(size.x) + ", eight sides",
                          0.0,
                          "across flats",
                          writer.subject,
                          1});
            return;
    }
}

ViewSizes sizesOn(const PartView& view,
                  const Piece& piece,
                  const ResolvedPiece& resolved,
                  std::size_t index,
                  bool withSection,
                  const SectionPlan* sections) {
    SizeWriter writer{
        view, piece, resolved, resolved.parts[index], sections, {SubjectKind::Part, index}};
    if (isEnd(view.face)) {
        if (withSection) {
            addSectionSizes(writer);
        }
        addTenonSizes(writer);
        addEndMortiseNotes(writer);
    } else {
        if (view.face == Face::FaceSide) {
            addLengths(writer);
            addTenonNotes(writer);
        }
        addMortiseSizes(writer);
    }
    addCutSizes(writer);
    addEasingSizes(writer);
    addAngleSizes(writer);
    addHornSizes(writer);
    return std::move(writer.sizes);
}

std::string finishedSize(const Piece& piece, const ResolvedPart& part) {
    const auto shown = [&](Length length) { return letterLength(length, piece.style); };
    if (part.section == SectionForm::Round) {
        return shown(part.length()) + " \u00d7 \u2300" + shown(part.width.value);
    }
    return shown(part.length()) + " \u00d7 " + shown(part.width.value) + " \u00d7 " +
           shown(part.thickness.value);
}

}  // namespace shoulderline
