#include <algorithm>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

namespace {

const Size* basicSize(const ResolvedJoint& joint, SizeName name) {
    const Shoulders& shoulders = joint.tenon.shoulders;
    switch (name) {
        case SizeName::TenonThickness:
            return &joint.tenon.thickness;
        case SizeName::TenonWidth:
            return &joint.tenon.width;
        case SizeName::TenonLength:
            return &joint.tenon.length;
        case SizeName::Projection:
            return &joint.tenon.projection;
        case SizeName::ShoulderFaceSide:
            return &shoulders.faceSide;
        case SizeName::ShoulderBackSide:
            return &shoulders.backSide;
        case SizeName::ShoulderFaceEdge:
            return &shoulders.faceEdge;
        case SizeName::ShoulderBackEdge:
            return &shoulders.backEdge;
        case SizeName::MortiseWidth:
            return &joint.mortise.width;
        case SizeName::MortiseLength:
            return &joint.mortise.length;
        case SizeName::MortiseDepth:
            return &joint.mortise.depth;
        case SizeName::TenonGap:
        case SizeName::HaunchLength:
        case SizeName::PinDiameter:
        case SizeName::PinPlace:
        case SizeName::DrawboreOffset:
        case SizeName::WedgeFlare:
        case SizeName::KerfDepth:
        case SizeName::Horn:
        case SizeName::Diameter:
        case SizeName::BoreDepth:
        case SizeName::StoppedBy:
        case SizeName::TuskThickness:
        case SizeName::TuskWidth:
        case SizeName::TuskBeyond:
        case SizeName::TuskLength:
        case SizeName::EndEasing:
        case SizeName::PlugDiameter:
        case SizeName::PlugDepth:
        case SizeName::TongueThickness:
        case SizeName::TongueLength:
        case SizeName::GrooveWidth:
        case SizeName::GrooveDepth:
        case SizeName::Room:
        case SizeName::LapDepth:
            break;
    }
    return nullptr;
}

}  // namespace

const Size* ResolvedJoint::size(SizeName which) const {
    const auto it = std::find_if(
        further.begin(), further.end(), [which](const FurtherSize& f) { return f.name == which; });
    if (it != further.end()) {
        return &it->size;
    }
    const Size* basic = hasTenon() ? basicSize(*this, which) : nullptr;
    return basic != nullptr && !basic->reasons.empty() ? basic : nullptr;
}

}  // namespace shoulderline
