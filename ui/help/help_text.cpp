#include "ui/help/help_text.h"

#include <QDir>
#include <utility>

#include "ui/help/joint_picture.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

HelpText::HelpText(const QString& folder, Resources resources, QWidget* parent)
    : QTextBrowser(parent), folder_(folder), resources_(std::move(resources)) {}

QVariant HelpText::loadResource(int type, const QUrl& name) {
    constexpr int kWidth = 400;
    if (type != QTextDocument::ImageResource) {
        return QTextBrowser::loadResource(type, name);
    }
    return jointPicture(name,
                        QDir(folder_).filePath(u"joints/examples"_s),
                        resources_,
                        palette().color(QPalette::Text),
                        kWidth,
                        devicePixelRatioF());
}

}  // namespace shoulderline
