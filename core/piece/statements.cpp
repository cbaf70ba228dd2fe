#include "core/piece/statements.h"

#include <algorithm>

#include "core/measure/expression.h"

namespace shoulderline {

namespace {

using Visit = std::function<void(Statement&)>;

template <class Call>
void visitRelation(Stands& stands, Call call) {
    for (Statement* statement : {&stands.x.at,
                                 &stands.y.at,
                                 &stands.foot,
                                 &stands.height,
                                 &stands.rake,
                                 &stands.splay,
                                 &stands.atLevel}) {
        call(*statement);
    }
}

template <class Call>
void visitRelation(Spans& spans, Call call) {
    if (spans.level) {
        call(spans.level->at);
    }
    if (spans.levelTo) {
        call(spans.levelTo->at);
    }
    call(spans.set.by);
}

template <class Call>
void visitRelation(Caps& caps, Call call) {
    for (auto& [side, statement] : caps.overhang) {
        call(statement);
    }
}

template <class Call>
void visitPlacing(Statement& x,
                  Statement& y,
                  Statement& z,
                  Statement& aboutX,
                  Statement& aboutY,
                  Statement& aboutZ,
                  Call call) {
    for (Statement* statement : {&x, &y, &z}) {
        call(*statement);
    }
    for (Statement* statement : {&aboutX, &aboutY, &aboutZ}) {
        call(*statement);
    }
}

template <class Call>
void visitRelation(Free& free, Call call) {
    visitPlacing(free.x, free.y, free.z, free.aboutX, free.aboutY, free.aboutZ, call);
    call(free.length);
}

template <class Call>
void visitRelation(Fills& fills, Call call) {
    call(fills.set.by);
}

template <class Call>
void visitBend(Bend& bend, Call call) {
    for (Statement* statement :
         {&bend.rise, &bend.radius, &bend.plies, &bend.ply, &bend.springback}) {
        call(*statement);
    }
    for (BowPoint& point : bend.through) {
        call(point.along);
        call(point.rise);
    }
}

template <class Call>
void visitSwing(Swing& swing, Call call) {
    for (Statement* statement :
         {&swing.pin, &swing.pinDepth, &swing.spacer, &swing.peg, &swing.pegDepth}) {
        call(*statement);
    }
    for (RestStation& station : swing.stations) {
        call(station.behind);
        call(station.lean);
    }
}

template <class Call>
void visitUse(Use& use, Call call) {
    for (StatedLoad& load : use.loads) {
        call(load.newtons);
        call(load.height);
    }
    for (StrengthTest& test : use.tests) {
        call(test.newtonMetres);
    }
    for (RoomAir* air : {&use.climate.dry, &use.climate.damp}) {
        for (Statement* statement : {&air->moisture, &air->celsius, &air->humidity}) {
            call(*statement);
        }
    }
}

template <class Call>
void visitAll(Piece& piece, Call call) {
    for (Measure& measure : piece.measures) {
        for (Statement* statement :
             {&measure.expression, &measure.least, &measure.most, &measure.found}) {
            call(*statement);
        }
    }
    for (Stock& stock : piece.stocks) {
        for (Statement* statement : {&stock.thickness,
                                     &stock.measuredThickness,
                                     &stock.greatestWidth,
                                     &stock.greatestLength}) {
            call(*statement);
        }
    }
    for (Assembly& a : piece.assemblies) {
        visitPlacing(a.x, a.y, a.z, a.aboutX, a.aboutY, a.aboutZ, call);
        if (a.swing) {
            visitSwing(*a.swing, call);
        }
    }
    for (Part& part : piece.parts) {
        call(part.width);
        call(part.thickness);
        call(part.foundWidth);
        call(part.foundThickness);
        std::visit([&](auto& relation) { visitRelation(relation, call); }, part.relation);
        if (part.spacing) {
            call(part.spacing->count);
            call(part.spacing->greatestGap);
            call(part.spacing->pitch);
        }
        if (part.bend) {
            visitBend(*part.bend, call);
        }
        for (auto& [face, points] : part.shape) {
            for (EdgePoint& point : points) {
                call(point.along);
                call(point.in);
                call(point.bow);
            }
        }
        for (CutStatement& cut : part.cuts) {
            for (Statement* statement : {&cut.along,
                                         &cut.length,
                                         &cut.across,
                                         &cut.width,
                                         &cut.depth,
                                         &cut.tiltAlong,
                                         &cut.tiltAcross,
                                         &cut.headWidth,
                                         &cut.headDepth,
                                         &cut.proud}) {
                call(*statement);
            }
        }
        for (EasingStatement& easing : part.easings) {
            for (Statement* statement : {&easing.size,
                                         &easing.second,
                                         &easing.fromStart,
                                         &easing.fromFar,
                                         &easing.runOut}) {
                call(*statement);
            }
        }
    }
    for (JointStatement& joint : piece.joints) {
        for (auto& [name, size] : joint.sizes) {
            call(size.expression);
        }
    }
    for (HouseRule& rule : piece.houseRules) {
        call(rule.value);
    }
    for (Statement& chisel : piece.rack) {
        call(chisel);
    }
    visitUse(piece.use, call);
}

bool isNameCharacter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' ||
           static_cast<unsigned char>(c) >= 0x80;
}

}  // namespace

void forEachStatement(Piece& piece, const Visit& visit) {
    visitAll(piece, visit);
}

Statement renameInExpression(const Statement& statement,
                             std::string_view name,
                             std::string_view newName,
                             Unit unit) {
    const Result<Expression> expression = Expression::parse(statement, unit);
    if (!expression ||
        !std::binary_search(
            expression->names().begin(), expression->names().end(), std::string(name))) {
        return statement;
    }
    // A name ends where no further word follows it; another name may only begin with this one.
    Statement renamed;
    for (std::size_t i = 0; i < statement.size();) {
        const bool startsHere = statement.compare(i, name.size(), name) == 0;
        std::size_t before = i;
        while (before > 0 && statement[before - 1] == ' ') {
            --before;
        }
        std::size_t after = i + name.size();
        while (startsHere && after < statement.size() && statement[after] == ' ') {
            ++after;
        }
        const bool continues =
            (before > 0 && isNameCharacter(statement[before - 1])) ||
            (startsHere && after < statement.size() && isNameCharacter(statement[after]));
        if (startsHere && !continues) {
            renamed += newName;
            i += name.size();
        } else {
            renamed += statement[i++];
        }
    }
    return renamed;
}

void renameInReferences(Piece& piece, const std::string& name, const std::string& newName) {
    const auto rename = [&](std::string& reference) {
        if (reference == name) {
            reference = newName;
        } else if (reference == name + ", left" || reference == name + ", right") {
            reference = newName + reference.substr(name.size());
        }
    };
    for (Part& part : piece.parts) {
        if (Spans* spans = std::get_if<Spans>(&part.relation)) {
            rename(spans->from);
            rename(spans->to);
            rename(spans->givesWay.to);
        } else if (Caps* caps = std::get_if<Caps>(&part.relation)) {
            for (std::string& reference : caps->on) {
                rename(reference);
            }
        } else if (Fills* fills = std::get_if<Fills>(&part.relation)) {
            for (std::array<std::string, 2>* two : {&fills->edges, &fills->ends}) {
                rename(two->front());
                rename(two->back());
            }
        }
        if (part.spacing) {
            rename(part.spacing->after);
            rename(part.spacing->before);
        }
    }
    for (Assembly& assembly : piece.assemblies) {
        if (assembly.swing) {
            rename(assembly.swing->leans);
            rename(assembly.swing->rest);
            for (std::string& reference : assembly.swing->pinned) {
                rename(reference);
            }
        }
    }
    for (JointStatement& joint : piece.joints) {
        rename(joint.tenoned);
        rename(joint.mortised);
    }
    for (StatedLoad& load : piece.use.loads) {
        rename(load.on);
    }
    for (StrengthTest& test : piece.use.tests) {
        rename(test.tenoned);
        rename(test.mortised);
    }
}

}  // namespace shoulderline
