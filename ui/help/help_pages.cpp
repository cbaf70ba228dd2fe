#include "ui/help/help_pages.h"

#include <QFile>

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

const QString kEnding = u".html"_s;
const QString kJoints = u"joints/"_s;

}  // namespace

HelpPages::HelpPages(const QString& folder) : folder_(folder) {
    for (const QString& within : {QString(), kJoints}) {
        const QDir place(folder_.filePath(within));
        for (const QString& file : place.entryList({u"*"_s + kEnding}, QDir::Files, QDir::Name)) {
            names_ << within + file.chopped(kEnding.size());
        }
    }
}

QString HelpPages::titleOf(const QString& name) {
    if (name.endsWith(u"index"_s)) {
        return name.startsWith(kJoints) ? u"joints"_s : u"contents"_s;
    }
    QString title = name.startsWith(kJoints) ? name.mid(kJoints.size()) : name;
    return title.replace(u'_', u' ');
}

QString HelpPages::page(const QString& name) const {
    if (!names_.contains(name)) {
        return {};
    }
    QFile file(folder_.filePath(name + kEnding));
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

QString HelpPages::pageOf(const QString& word) const {
    QString name = word;
    name = kJoints + name.replace(u' ', u'_');
    return names_.contains(name) ? name : QString();
}

QString HelpPages::linked(const QString& from, const QString& link) const {
    const QString folder = from.startsWith(kJoints) ? kJoints : QString();
    QString name = QDir::cleanPath(folder + link.section(u'#', 0, 0));
    if (name.endsWith(kEnding)) {
        name.chop(kEnding.size());
    }
    return names_.contains(name) ? name : QString();
}

QStringList HelpPages::found(const QString& wanted) const {
    const QString sought = wanted.simplified();
    QStringList byTitle;
    QStringList byText;
    for (const QString& name : names_) {
        if (sought.isEmpty() || titleOf(name).contains(sought, Qt::CaseInsensitive)) {
            byTitle << name;
        } else if (page(name).contains(sought, Qt::CaseInsensitive)) {
            byText << name;
        }
    }
    return byTitle + byText;
}

}  // namespace shoulderline
