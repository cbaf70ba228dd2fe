#include "tests/property/random_frame.h"

#include <algorithm>

#include <rapidcheck.h>

namespace shoulderline::testing {

std::string sixteenths(int count) {
    return std::to_string(count) + "/16 in";
}

Piece randomFrame() {
    const int post = *rc::gen::inRange(20, 49);
    const int rail = *rc::gen::inRange(8, 25);
    Piece piece;
    piece.name = "frame";
    piece.measures = {{"width", sixteenths(*rc::gen::inRange(240, 1200)), "", "", "", "", ""},
                      {"depth", sixteenths(*rc::gen::inRange(240, 600)), "", "", "", "", ""},
                      {"height", sixteenths(*rc::gen::inRange(200, 500)), "", "", "", "", ""},
                      {"rail depth", sixteenths(*rc::gen::inRange(24, 90)), "", "", "", "", ""}};
    piece.stocks = {{"post stock", "White oak", Cut::Rift, sixteenths(post), "", "", "", ""},
                    {"rail stock",
                     "White oak",
                     Cut::Quarter,
                     sixteenths(std::min(rail, post - 4)),
                     "",
                     "",
                     "",
                     ""},
                    {"slat stock",
                     "White oak",
                     Cut::Quarter,
                     sixteenths(*rc::gen::inRange(4, 9)),
                     "",
                     "",
                     "",
                     ""}};
    Part front;
    front.name = "front post";
    front.role = Role::Post;
    front.stock = "post stock";
    front.pair = true;
    front.relation = Stands{{Side::Right, "width / 2"}, {Side::Front, "0 in"}, "", "height"};
    Part back = front;
    back.name = "back post";
    back.relation = Stands{{Side::Right, "width / 2"}, {Side::Back, "depth"}, "", "height"};
    Part frontRail;
    frontRail.name = "front rail";
    frontRail.stock = "rail stock";
    frontRail.width = "rail depth";
    frontRail.relation = Spans{"front post, left",
                               "front post, right",
                               Position{Side::Top, "height - 1 in"},
                               {Side::Front, sixteenths(*rc::gen::inRange(0, 4))},
                               false};
    Part sideRail = frontRail;
    sideRail.name = "side rail";
    sideRail.pair = true;
    sideRail.relation = Spans{"front post",
                              "back post",
                              Position{Side::Top, "height - 1 in"},
                              {Side::Right, sixteenths(*rc::gen::inRange(0, 4))},
                              false};
    Part arm;
    arm.name = "arm";
    arm.role = Role::Arm;
    arm.stock = "rail stock";
    arm.width = "4 in";
    arm.pair = true;
    arm.relation = Caps{{"front post", "back post"},
                        Side::Back,
                        {{Side::Right, "1 in"}, {Side::Front, "2 in"}, {Side::Back, "2 in"}}};
    piece.parts = {front, back, frontRail, sideRail, arm};
    return piece;
}

}  // namespace shoulderline::testing
