// The help on joints: a page for every word of the file format, links that lead somewhere.

#include <QLineEdit>
#include <QListWidget>
#include <QRegularExpression>
#include <QTest>

#include <gtest/gtest.h>

#include "core/piece/words.h"
#include "ui/help/help_window.h"
#include "ui/look/text.h"

namespace shoulderline {
namespace {

using namespace Qt::Literals::StringLiterals;

HelpPages pages() {
    return HelpPages(QStringLiteral(SHOULDERLINE_SOURCE_DIR "/resources/help"));
}

TEST(HelpPages, EveryKindOfJointAndEveryFeatureHasOne) {
    const HelpPages help = pages();
    for (const JointKind kind : allWords<JointKind>()) {
        EXPECT_FALSE(help.page(help.pageOf(qt(wordFor(kind)))).isEmpty()) << wordFor(kind);
    }
    for (const JointFeature feature : allWords<JointFeature>()) {
        EXPECT_FALSE(help.page(help.pageOf(qt(wordFor(feature)))).isEmpty()) << wordFor(feature);
    }
}

TEST(HelpPages, EveryLinkLeadsToAPage) {
    const HelpPages help = pages();
    const QRegularExpression link(u"href=\"([^\"]*)\""_s);
    int count = 0;
    for (const QString& name : help.names()) {
        QRegularExpressionMatchIterator all = link.globalMatch(help.page(name));
        while (all.hasNext()) {
            const QString to = all.next().captured(1);
            EXPECT_FALSE(help.linked(name, to).isEmpty())
                << name.toStdString() << " to " << to.toStdString();
            ++count;
        }
    }
    EXPECT_GT(count, 30);
    EXPECT_TRUE(help.linked(u"joints/blind"_s, u"no_such.html"_s).isEmpty());
}

TEST(HelpWindow, IsSearchedByNameAndRead) {
    HelpWindow window(pages());
    window.showWord(u"let in"_s);
    EXPECT_EQ(window.shown(), u"joints/let_in"_s);

    auto* search = window.findChild<QLineEdit*>(u"helpSearch"_s);
    auto* list = window.findChild<QListWidget*>(u"helpList"_s);
    QTest::keyClicks(search, u"drawbor"_s);
    EXPECT_EQ(window.shown(), u"joints/drawbored"_s);
    EXPECT_EQ(list->item(0)->text(), u"drawbored"_s);
    QTest::keyClicks(search, u"zzz"_s);
    EXPECT_EQ(list->count(), 0);
}

}  // namespace
}  // namespace shoulderline
