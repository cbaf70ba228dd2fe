#include "app/read_resources.h"

#include <QFile>
#include <string>

namespace shoulderline {

namespace {

std::string textOf(const char* path) {
    QFile file(QString::fromLatin1(path));
    return file.open(QIODevice::ReadOnly) ? file.readAll().toStdString() : std::string();
}

}  // namespace

Result<Resources> readResources() {
    Result<RuleBook> rules = RuleBook::read(textOf(":/rules/rule_book.json"));
    if (!rules) {
        return tl::unexpected(rules.error());
    }
    Result<Workshop> workshop = Workshop::read(textOf(":/rules/workshop.json"));
    if (!workshop) {
        return tl::unexpected(workshop.error());
    }
    Result<SpeciesTable> species = SpeciesTable::read(textOf(":/timber/species.json"));
    if (!species) {
        return tl::unexpected(species.error());
    }
    Result<StrengthBook> strength = StrengthBook::read(textOf(":/strength/strength_book.json"));
    if (!strength) {
        return tl::unexpected(strength.error());
    }
    return Resources{
        std::move(*rules), std::move(*workshop), std::move(*species), std::move(*strength)};
}

}  // namespace shoulderline
