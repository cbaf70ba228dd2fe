#include "ui/printing/printer_correction.h"

#include <QSettings>
#include <QUrl>

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

QString groupOf(const QString& printer, const Paper& paper) {
    return u"printers/"_s + QString::fromLatin1(QUrl::toPercentEncoding(printer)) + u"/"_s +
           QString::fromLatin1(QUrl::toPercentEncoding(QString::fromStdString(paper.name)));
}

}  // namespace

std::optional<Measured> measuredFor(const QString& printer, const Paper& paper) {
    QSettings settings;
    settings.beginGroup(groupOf(printer, paper));
    bool hasAcross = false;
    bool hasUp = false;
    const Measured measured{{settings.value(u"across"_s).toDouble(&hasAcross),
                             settings.value(u"up"_s).toDouble(&hasUp)},
                            settings.value(u"date"_s).toString()};
    return hasAcross && hasUp ? std::optional(measured) : std::nullopt;
}

void keepMeasured(const QString& printer, const Paper& paper, const Measured& measured) {
    QSettings settings;
    settings.beginGroup(groupOf(printer, paper));
    settings.setValue(u"across"_s, measured.lengths.x);
    settings.setValue(u"up"_s, measured.lengths.y);
    settings.setValue(u"date"_s, measured.date);
}

void forgetMeasured(const QString& printer, const Paper& paper) {
    QSettings().remove(groupOf(printer, paper));
}

ScaleCorrection correctionFor(const QString& printer, const Paper& paper) {
    const std::optional<Measured> measured = measuredFor(printer, paper);
    return measured ? correctionFrom(paper, measured->lengths).value_or(ScaleCorrection{})
                    : ScaleCorrection{};
}

}  // namespace shoulderline
