#include "core/drawing/mortise_rows.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/part_sizing.h"
#include "core/drawing/turned_mouth.h"
#include "core/resolve/frames.h"
#include "core/resolve/joint_angles.h"
#include "core/resolve/shaping_order.h"

namespace shoulderline {

namespace {

bool isEvenlySpaced(const std::vector<const MortiseSolid*>& row) {
    if (row.size() < 3) {
        return false;
    }
    const double pitch = row[1]->box.min.x - row[0]->box.min.x;
    for (std::size_t i = 1; i + 1 < row.size(); ++i) {
        if (!isSameSize(row[i + 1]->box.min.x - row[i]->box.min.x, pitch)) {
            return false;
        }
    }
    return true;
}

}  // namespace

bool areAlike(const ResolvedPiece& resolved,
              const ResolvedPart& part,
              const MortiseSolid& a,
              const MortiseSolid& b) {
    const auto turnOf = [&](const MortiseSolid& m) {
        const std::optional<TurnedMouth> turned = turnedMouthOf(resolved, part, m);
        return turned ? turned->turn.radians() : 0.0;
    };
    constexpr double kSameTurn = 1e-6;  // radians
    const Vec3 sizeA = a.box.size();
    const Vec3 sizeB = b.box.size();
    const auto mateOf = [&](const MortiseSolid& m) -> const std::string& {
        return resolved.parts[resolved.joints[m.joint].tenoned].of;
    };
    return a.face == b.face && a.isThrough == b.isThrough && isSameSize(sizeA.x, sizeB.x) &&
           isSameSize(sizeA.y, sizeB.y) && isSameSize(sizeA.z, sizeB.z) &&
           isSameSize(a.box.min.y, b.box.min.y) && isSameSize(a.box.min.z, b.box.min.z) &&
           mateOf(a) == mateOf(b) && std::abs(turnOf(a) - turnOf(b)) < kSameTurn;
}

bool isOutOfSquare(Angle lean) {
    return std::abs(lean.degrees()) > 0.05;
}

bool isBored(const ResolvedPiece& resolved, const MortiseSolid& mortise) {
    return resolved.joints[mortise.joint].kind == JointKind::Round;
}

bool isLeaningBore(const ResolvedPiece& resolved, const MortiseSolid& mortise) {
    return isBored(resolved, mortise) &&
           isOutOfSquare(anglesOf(resolved, resolved.joints[mortise.joint]).mortise);
}

bool isDepthAlongIt(const ResolvedPiece& resolved,
                    const ResolvedPart& part,
                    const MortiseSolid& mortise) {
    if (isBored(resolved, mortise)) {
        return isLeaningBore(resolved, mortise) && !mortise.isThrough;
    }
    const std::size_t mortised = resolved.joints[mortise.joint].mortised;
    return &resolved.parts[mortised] == &part && isStoppedAlongTool(resolved, mortised, mortise);
}

double depthAlong(const ResolvedPiece& resolved,
                  const ResolvedPart& part,
                  const MortiseSolid& mortise) {
    const ResolvedJoint& joint = resolved.joints[mortise.joint];
    const bool isTurnedPart = part.section != SectionForm::Square;
    return (joint.mortise.depth.value + (isTurnedPart ? joint.mortise.below : Length())).mm();
}

std::vector<MortiseRow> rowsOn(Face face, const ResolvedPiece& resolved, const ResolvedPart& part) {
    std::vector<MortiseRow> rows;
    for (const MortiseSolid& mortise : part.mortises) {
        if (mortise.face != face) {
            continue;
        }
        const auto row = std::find_if(rows.begin(), rows.end(), [&](const MortiseRow& r) {
            return areAlike(resolved, part, *r.mortises.front(), mortise);
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

}  // namespace shoulderline
