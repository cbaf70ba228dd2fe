#include "app/read_resources.h"

#include <QDir>
#include <QFile>
#include <string>

#include "core/storage/piece_text.h"

namespace shoulderline {

namespace {

std::string textOf(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll().toStdString() : std::string();
}

// All in resources/starters, by their names.
Result<std::vector<Piece>> readStarters() {
    std::vector<Piece> starters;
    const QDir folder(QStringLiteral(":/starters"));
    for (const QString& name : folder.entryList(QDir::Files, QDir::Name)) {
        Result<Piece> piece = readPiece(textOf(folder.filePath(name)));
        if (!piece) {
            return tl::unexpected(piece.error());
        }
        starters.push_back(std::move(*piece));
    }
    return starters;
}

}  // namespace

Result<Resources> readResources() {
    Result<RuleBook> rules = RuleBook::read(textOf(QStringLiteral(":/rules/rule_book.json")));
    if (!rules) {
        return tl::unexpected(rules.error());
    }
    Result<Workshop> workshop = Workshop::read(textOf(QStringLiteral(":/rules/workshop.json")));
    if (!workshop) {
        return tl::unexpected(workshop.error());
    }
    Result<SpeciesTable> species =
        SpeciesTable::read(textOf(QStringLiteral(":/timber/species.json")));
    if (!species) {
        return tl::unexpected(species.error());
    }
    Result<StrengthBook> strength =
        StrengthBook::read(textOf(QStringLiteral(":/strength/strength_book.json")));
    if (!strength) {
        return tl::unexpected(strength.error());
    }
    Result<std::vector<Piece>> starters = readStarters();
    if (!starters) {
        return tl::unexpected(starters.error());
    }
    return Resources{std::move(*rules),
                     std::move(*workshop),
                     std::move(*species),
                     std::move(*strength),
                     std::move(*starters)};
}

}  // namespace shoulderline
