// The help on joints: a page for every word of the file format, links that lead somewhere.

#include <QLineEdit>
#include <QListWidget>
#include <QRegularExpression>
#include <QTest>

#include <gtest/gtest.h>

#include "core/piece/words.h"
#include "tests/ui/ui_test_support.h"
#include "ui/help/help_window.h"
#include "ui/help/joint_picture.h"
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

// Each page on a joint has its picture, and no two of them are alike but where the picture cannot
// show what they differ in.
TEST(HelpPages, EveryPageOnAJointHasItsPicture) {
    const HelpPages help = pages();
    const QDir examples(help.folder() + u"/joints/examples"_s);
    const QRegularExpression source(u"<img src=\"([^\"]*)\""_s);
    int pictures = 0;
    for (const QString& name : help.names()) {
        if (!name.startsWith(u"joints/"_s) || name.endsWith(u"index"_s)) {
            continue;
        }
        const QRegularExpressionMatch match = source.match(help.page(name));
        ASSERT_TRUE(match.hasMatch()) << name.toStdString();
        const QUrl what(match.captured(1).replace(u"&amp;"_s, u"&"_s));
        const QImage image =
            jointPicture(what, examples, testing::resources(), Qt::black, 400, 1.0);
        ASSERT_FALSE(image.isNull()) << name.toStdString();
        int inked = 0;
        for (int y = 0; y < image.height(); ++y) {
            for (int x = 0; x < image.width(); ++x) {
                inked += qAlpha(image.pixel(x, y)) > 128 ? 1 : 0;
            }
        }
        EXPECT_GT(inked, 1500) << name.toStdString();
        ++pictures;
    }
    EXPECT_EQ(pictures,
              static_cast<int>(allWords<JointKind>().size() + allWords<JointFeature>().size()));
}

TEST(HelpPages, APictureOfNothingIsNone) {
    const QDir examples(pages().folder() + u"/joints/examples"_s);
    EXPECT_TRUE(
        jointPicture(QUrl(u"no_such_piece"_s), examples, testing::resources(), Qt::black, 400, 1.0)
            .isNull());
}

TEST(HelpWindow, IsSearchedByNameAndRead) {
    HelpWindow window(pages(), testing::resources());
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
