#include "core/drawing/part_pair.h"

#include "core/drawing/dimension_parts.h"
#include "core/drawing/overloaded.h"

namespace shoulderline {

std::vector<Op> mirrored(std::vector<Op> ops, double at) {
    const auto flip = [&](Vec2& p) { p.x = 2.0 * at - p.x; };
    for (Op& op : ops) {
        std::visit(Overloaded{
                       [&](Stroke& stroke) {
                           for (Vec2& p : stroke.points) {
                               flip(p);
                           }
                       },
                       [&](Fill& fill) {
                           for (Vec2& p : fill.points) {
                               flip(p);
                           }
                       },
                       [&](ArcOp& arc) {
                           flip(arc.centre);
                           arc.start = Angle::degrees(180.0) - arc.start;
                           arc.sweep = -arc.sweep;
                       },
                       [](auto&) {},
                   },
                   op);
    }
    return ops;
}

std::vector<Op> pairOps(const PairDrawing& pair, double lettering) {
    constexpr double kToWords = 2.0;
    const auto titled = [](const std::string& hand, const char* how) {
        return hand.empty() ? std::string(how) : hand + ", " + how;
    };
    const double words = lettering + 2.0 * kToWords;
    std::vector<Op> ops;
    double y = 0.0;
    const auto add = [&](std::vector<Op> hand, const std::string& title) {
        ops.push_back(TextOp{{0.0, y + lettering}, title, lettering, Align::Left, false, false});
        y += words + 2.0;  // clear of the mark on the face edge
        move(hand, {0.0, y});
        ops.insert(
            ops.end(), std::make_move_iterator(hand.begin()), std::make_move_iterator(hand.end()));
        y += pair.height + 2.0 * kToWords;
    };
    add(pair.drawn, titled(pair.drawnHand, "as drawn"));
    add(mirrored(pair.drawn, pair.length / 2.0), titled(pair.otherHand, "mirrored"));
    return ops;
}

}  // namespace shoulderline
