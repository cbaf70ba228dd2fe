#include "tests/support/pieces.h"

#include <algorithm>
#include <cstdlib>
#include <iostream>

#include "core/storage/piece_file.h"
#include "core/storage/piece_text.h"

namespace shoulderline::testing {

namespace {

template <class T>
T orAbort(Result<T> result) {
    if (!result) {
        std::cerr << result.error().where << ": " << result.error().message << "\n";
        std::abort();
    }
    return std::move(*result);
}

}  // namespace

std::string textOf(const std::string& path) {
    return orAbort(readFile(std::string(SHOULDERLINE_SOURCE_DIR) + "/" + path));
}

const RuleBook& ruleBook() {
    static const RuleBook kBook = orAbort(RuleBook::read(textOf("resources/rules/rule_book.json")));
    return kBook;
}

const Workshop& workshop() {
    static const Workshop kWorkshop =
        orAbort(Workshop::read(textOf("resources/rules/workshop.json")));
    return kWorkshop;
}

const SpeciesTable& speciesTable() {
    static const SpeciesTable kTable =
        orAbort(SpeciesTable::read(textOf("resources/timber/species.json")));
    return kTable;
}

const StrengthBook& strengthBook() {
    static const StrengthBook kBook =
        orAbort(StrengthBook::read(textOf("resources/strength/strength_book.json")));
    return kBook;
}

Piece pieceAt(const std::string& path) {
    return orAbort(readPiece(textOf(path + ".shoulder")));
}

Piece sample(const std::string& name) {
    return pieceAt("samples/" + name);
}

Piece twoPostsAndARail() {
    Piece piece;
    piece.name = "frame";
    piece.stocks = {{"post stock", "White oak", Cut::Rift, "2 in", "", "", "", ""},
                    {"rail stock", "White oak", Cut::Quarter, "7/8 in", "", "", "", ""}};
    Part post;
    post.name = "post";
    post.role = Role::Post;
    post.stock = "post stock";
    post.pair = true;
    post.relation = Stands{{Side::Right, "12 in"}, {Side::Front, "0 in"}, "", "24 in"};
    Part rail;
    rail.name = "rail";
    rail.stock = "rail stock";
    rail.width = "3 in";
    rail.relation = Spans{
        "post, left", "post, right", Position{Side::Top, "18 in"}, Setting{Side::Front, ""}, false};
    piece.parts = {post, rail};
    return piece;
}

ResolvedPiece resolved(const Piece& piece) {
    return resolve(piece, ruleBook(), workshop());
}

std::vector<Finding> findings(const Piece& piece) {
    return check(piece, resolved(piece), speciesTable(), strengthBook());
}

namespace {

template <class Items>
auto& named(Items& items, const std::string& name) {
    const auto it = std::find_if(
        items.begin(), items.end(), [&](const auto& item) { return item.name == name; });
    if (it == items.end()) {
        std::cerr << "nothing is named '" << name << "'\n";
        std::abort();
    }
    return *it;
}

}  // namespace

const ResolvedPart& partNamed(const ResolvedPiece& piece, const std::string& name) {
    return named(piece.parts, name);
}

const ResolvedJoint& jointNamed(const ResolvedPiece& piece, const std::string& name) {
    return named(piece.joints, name);
}

Part& statedPart(Piece& piece, const std::string& name) {
    return named(piece.parts, name);
}

Measure& statedMeasure(Piece& piece, const std::string& name) {
    return named(piece.measures, name);
}

std::vector<Finding> ofRule(const std::vector<Finding>& findings, RuleId rule) {
    std::vector<Finding> some;
    std::copy_if(
        findings.begin(), findings.end(), std::back_inserter(some), [rule](const Finding& finding) {
            return finding.rule == rule;
        });
    return some;
}

}  // namespace shoulderline::testing
