#include "tests/reference/pieces/seat_frame.h"

namespace shoulderline::reference {

namespace {

Part leg(const std::string& name, const std::string& right, Position depth, const Stance& stance) {
    Part post;
    post.name = name;
    post.role = Role::Post;
    post.stock = "leg stock";
    post.width = "1 3/4 in";
    post.pair = true;
    post.faceEdge = Side::Front;
    Stands stands;
    stands.x = {Side::Right, right};
    stands.y = std::move(depth);
    stands.height = "20 in";
    stands.atLevel = "16 in";
    stands.rake = stance.rake;
    stands.splay = stance.splay;
    post.relation = stands;
    return post;
}

}  // namespace

Part railBetween(const std::string& name,
                 const std::string& from,
                 const std::string& to,
                 Side set,
                 const char* top) {
    Part rail;
    rail.name = name;
    rail.stock = "rail stock";
    rail.width = "2 1/2 in";
    Spans spans;
    spans.from = from;
    spans.to = to;
    spans.angled = true;
    spans.level = Position{Side::Top, top};
    spans.set = {set, "3/8 in"};
    rail.relation = spans;
    return rail;
}

Piece seatFrame(const Stance& stance) {
    Piece piece;
    piece.stocks = {{"leg stock", "White ash", Cut::Flat, "1 3/4 in", "", "", "", ""},
                    {"rail stock", "White ash", Cut::Flat, "13/16 in", "", "", "", ""}};
    piece.parts = {
        leg("front leg", "9 1/2 in", {Side::Front, "0"}, stance),
        leg("back leg", std::string("9 1/2 in - ") + stance.behind, {Side::Back, "17 in"}, stance),
        railBetween("front rail", "front leg, left", "front leg, right", Side::Front, "17 in"),
        railBetween("back rail", "back leg, left", "back leg, right", Side::Back, "16 1/2 in")};
    Part side = railBetween("side rail", "front leg", "back leg", Side::Right, "17 in");
    side.pair = true;
    piece.parts.push_back(side);
    for (const Part& rail : piece.parts) {
        for (const char* into : {"front leg", "back leg"}) {
            const bool meets = rail.name == "side rail" ||
                               rail.name.substr(0, 4) == std::string(into).substr(0, 4);
            if (stance.isSquareToPost && rail.role == Role::Rail && meets) {
                JointStatement joint;
                joint.tenoned = rail.name;
                joint.mortised = into;
                joint.features = {JointFeature::SquareToPost};
                piece.joints.push_back(joint);
            }
        }
    }
    return piece;
}

}  // namespace shoulderline::reference
