#include "core/drawing/part_joint_notes.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "core/drawing/part_angles.h"
#include "core/drawing/part_sizing.h"
#include "core/drawing/tenon_pegs.h"
#include "core/resolve/end_plane.h"
#include "core/resolve/tenon_mitre.h"

namespace shoulderline {

namespace {

// The tenons of one joint at one end of the part.
class TenonTeller {
  public:
    TenonTeller(const SizeWriter& writer, const TenonSolid& main, End end)
        : writer_(writer),
          part_(writer.part),
          joint_(writer.resolved.joints[main.joint]),
          main_(main),
          end_(end) {}

    [[nodiscard]] std::vector<std::string> lines() const {
        std::vector<std::string> lines;
        addHaunch(lines);
        addEnd(lines);
        addMitre(lines);
        addKerfs(lines);
        addPegHoles(lines);
        return lines;
    }
    // Near the tip, at the face edge: a pin or a slot lies in the middle.
    [[nodiscard]] Vec2 target() const {
        constexpr double kAlong = 0.8;
        constexpr double kAcross = 0.15;
        const Box& box = main_.box;
        const double along = end_ == End::Far ? kAlong : 1.0 - kAlong;
        return writer_.view.toPlane(
            Vec3{box.min.x + along * box.size().x, box.min.y + kAcross * box.size().y, box.min.z});
    }

  private:
    [[nodiscard]] std::string shown(double mm) const { return writer_.shown(mm); }

    void addHaunch(std::vector<std::string>& lines) const {
        if (!joint_.has(JointFeature::SlopingHaunch)) {
            return;
        }
        for (const TenonSolid& haunch : part_.tenons) {
            const bool isOuter = haunch.box.max.y < main_.box.min.y + kLengthTolerance.mm() ||
                                 haunch.box.min.y > main_.box.max.y - kLengthTolerance.mm();
            if (haunch.joint != main_.joint || !haunch.isHaunch || !haunch.exact || !isOuter) {
                continue;
            }
            const bool isLow = haunch.box.max.y < main_.box.centre().y;
            lines.push_back("haunch " + shown(haunch.box.size().x) + " at the tenon, sloping to");
            lines.push_back("nothing at the " +
                            std::string(wordFor(isLow ? Face::FaceEdge : Face::BackEdge)));
        }
    }

    void addEnd(std::vector<std::string>& lines) const {
        const Length proud = joint_.tenon.projection.value;
        if (joint_.isThrough() && proud > kLengthTolerance) {
            lines.push_back("stands " + shown(proud.mm()) + " proud");
        }
        if (const Size* by = joint_.size(SizeName::EndEasing)) {
            const bool isRounded = joint_.has(JointFeature::RoundedEnd);
            lines.push_back(isRounded ? "end rounded R " + shown(by->value.mm()) + " all round"
                                      : "end chamfered " + shown(by->value.mm()) +
                                            " \u00d7 45\u00b0" + " all round");
        }
        if (joint_.has(JointFeature::RoundEnds) && main_.exact) {
            lines.push_back("edges rounded R " + shown(main_.box.size().z / 2.0));
        }
    }

    // How far a point stands out past the shoulder.
    [[nodiscard]] double reachOf(const Vec3& p) const {
        const double shoulder = endAt(part_, end_, p.y, p.z);
        return end_ == End::Far ? p.x - shoulder : shoulder - p.x;
    }

    // The lengths that are left at two sides across from one another, where they differ most.
    void addMitre(std::vector<std::string>& lines) const {
        if (!joint_.has(JointFeature::Mitred)) {
            return;
        }
        const std::optional<TenonMitre> mitre =
            mitreOf(main_, [this](const Vec3& p) { return reachOf(p); });
        if (!mitre) {
            return;
        }
        lines.push_back("end mitred " + std::to_string(std::lround(mitre->angle.degrees())) +
                        "\u00b0: " + shown(mitre->longest) + " long on the");
        lines.push_back(std::string(wordFor(mitre->longer)) + ", " + shown(mitre->shortest) +
                        " on the " + std::string(wordFor(mitre->shorter)));
        // The length that is dimensioned, to which it is sawn off square at first.
        lines.push_back(shown(joint_.tenon.length.value.mm()) + " long before the mitre");
    }

    void addKerfs(std::vector<std::string>& lines) const {
        int count = 0;
        double place = std::numeric_limits<double>::infinity();
        double depth = 0.0;
        for (const ResolvedCut& cut : part_.cuts) {
            const bool isKerf =
                cut.joint == main_.joint && cut.kind == CutKind::Notch && isEnd(cut.face);
            // Of twins or doubles those of the first.
            if (!isKerf || !main_.box.holds(cut.box, kLengthTolerance.mm())) {
                continue;
            }
            const Vec3 size = cut.box.size();
            const int across = size.y < size.z ? 1 : 2;
            const double middle = cut.box.centre()[across];
            place =
                std::min({place, middle - main_.box.min[across], main_.box.max[across] - middle});
            depth = size.x;
            ++count;
        }
        if (count > 0) {
            lines.push_back(std::to_string(count) + " saw kerfs for wedges, " + shown(depth));
            lines.push_back("deep, " + shown(place) + " in from each edge");
        }
    }

    void addPegHoles(std::vector<std::string>& lines) const {
        if (const std::optional<std::string> text =
                tenonPegsText(writer_.piece, writer_.resolved, main_.joint)) {
            const std::size_t comma = text->find(", ");
            lines.push_back(text->substr(0, comma + 1));
            lines.push_back(text->substr(comma + 2));
        }
    }

    const SizeWriter& writer_;
    const ResolvedPart& part_;
    const ResolvedJoint& joint_;
    const TenonSolid& main_;
    End end_;
};

std::vector<NeededNote> tenonNotesAt(const SizeWriter& writer, End end) {
    std::vector<NeededNote> notes;
    std::vector<std::size_t> done;
    for (const TenonSolid& tenon : writer.part.tenons) {
        const bool isHere = (tenon.box.min.x < 0.0) == (end == End::Start);
        if (!isHere || tenon.isHaunch ||
            std::find(done.begin(), done.end(), tenon.joint) != done.end()) {
            continue;
        }
        done.push_back(tenon.joint);
        const TenonTeller teller(writer, tenon, end);
        std::vector<std::string> lines = teller.lines();
        if (!lines.empty()) {
            notes.push_back({teller.target(), std::move(lines), subjectOfJoint(tenon.joint)});
        }
    }
    return notes;
}

// Whether the tenons at the start are bored or slotted.
bool hasHolesAtStart(const ResolvedPart& part) {
    return std::any_of(part.cuts.begin(), part.cuts.end(), [](const ResolvedCut& cut) {
        return cut.box.max.x < kLengthTolerance.mm() && !isEnd(cut.face);
    });
}

}  // namespace

void addTenonNotes(SizeWriter& writer) {
    if (writer.view.face != Face::FaceSide) {
        return;
    }
    std::vector<NeededNote> start = tenonNotesAt(writer, End::Start);
    std::vector<NeededNote> far = tenonNotesAt(writer, End::Far);
    const bool areAlike = !far.empty() && std::equal(start.begin(),
                                                     start.end(),
                                                     far.begin(),
                                                     far.end(),
                                                     [](const NeededNote& a, const NeededNote& b) {
                                                         return a.lines == b.lines;
                                                     });
    if (areAlike) {
        // At the start, as the section through both ends is marked at the far one; but not where
        // its holes have their notes.
        std::vector<NeededNote>& both = hasHolesAtStart(writer.part) ? far : start;
        for (NeededNote& note : both) {
            note.lines.front() = "each end: " + note.lines.front();
        }
        (hasHolesAtStart(writer.part) ? start : far).clear();
    }
    for (std::vector<NeededNote>* notes : {&start, &far}) {
        for (NeededNote& note : *notes) {
            writer.note(std::move(note));
        }
    }
}

}  // namespace shoulderline
