#include "core/drawing/part_legend.h"

#include <algorithm>
#include <string>

#include "core/drawing/trade_marks.h"
#include "core/piece/words.h"

namespace shoulderline {

bool showsFace(const std::vector<Op>& ops, Face face) {
    const std::string word = ", " + std::string(wordFor(face));
    return std::any_of(ops.begin(), ops.end(), [&](const Op& op) {
        const auto* group = std::get_if<BeginGroup>(&op);
        return group != nullptr && group->name.size() > word.size() &&
               group->name.compare(group->name.size() - word.size(), word.size(), word) == 0;
    });
}

namespace {

// Which of the joiner's marks a drawing has.
struct MarksOn {
    bool hasFaceMarks = false;
    bool hasThrough = false;
    bool hasBlind = false;
    bool hasGrain = false;
};

MarksOn marksOn(const std::vector<Op>& ops) {
    MarksOn marks;
    std::vector<SubjectKind> open;
    std::size_t diagonals = 0;  // of the mouth that is open
    for (const Op& op : ops) {
        if (const auto* group = std::get_if<BeginGroup>(&op)) {
            open.push_back(group->subject.kind);
            // Views, ends and sections alike have them, but not the tables of outlines.
            marks.hasGrain = marks.hasGrain || group->name == kGrainGroup;
            const bool isTable = group->name.rfind("outline of ", 0) == 0;
            marks.hasFaceMarks =
                marks.hasFaceMarks || (group->subject.kind == SubjectKind::Part && !isTable);
            diagonals = 0;
        } else if (std::holds_alternative<EndGroup>(op) && !open.empty()) {
            marks.hasBlind = marks.hasBlind || diagonals == 1;
            marks.hasThrough = marks.hasThrough || diagonals == 2;
            diagonals = 0;
            open.pop_back();
        } else if (const auto* stroke = std::get_if<Stroke>(&op)) {
            const bool isInJoint = !open.empty() && open.back() == SubjectKind::Joint;
            diagonals += isInJoint && stroke->role == LineRole::Construction ? 1 : 0;
        }
    }
    return marks;
}

}  // namespace

std::vector<Op> legendOf(const std::vector<Op>& drawing, Vec2 corner) {
    const MarksOn marks = marksOn(drawing);
    std::vector<Op> ops;
    constexpr double kHeight = 2.5;
    constexpr double kRow = 5.8;
    const double x = corner.x + 6.0;
    const double words = x + 9.0;
    double y = corner.y + 5.5;
    const auto say = [&](const std::string& text) {
        ops.push_back(TextOp{{words, y + kHeight / 2.0}, text, kHeight, Align::Left, false, false});
        y += kRow;
    };
    if (marks.hasFaceMarks) {
        ops.push_back(faceSideMark({x, y - 3.0}, 5.5));
        say("face side: mark from here");
        ops.push_back(faceEdgeMark({x, y + 1.8}, 3.6, true));
        say("face edge: and from here");
    }
    const auto mouth = [&](bool isThrough) {
        const Vec2 min{x - 3.5, y - 1.5};
        const Vec2 max{x + 3.5, y + 1.5};
        ops.push_back(Stroke{{min, {max.x, min.y}, max, {min.x, max.y}, min}, LineRole::Dimension});
        for (Op& op : mouthDiagonals(min, max, isThrough)) {
            ops.push_back(std::move(op));
        }
    };
    if (marks.hasThrough) {
        mouth(true);
        say("mortise right through");
    }
    if (marks.hasBlind) {
        mouth(false);
        say("blind mortise");
    }
    if (marks.hasGrain) {
        for (Op& op : grainArrow({x, y}, 7.0)) {
            ops.push_back(std::move(op));
        }
        say("the grain");
    }
    return ops;
}

}  // namespace shoulderline
