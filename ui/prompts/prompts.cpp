#include "ui/prompts/prompts.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QInputDialog>
#include <QLocale>
#include <QMessageBox>
#include <QPushButton>

namespace shoulderline {

namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Prompts", text);
}

QString saveWith(QWidget* parent,
                 const QString& title,
                 const QString& suggested,
                 const QString& filter,
                 const QString& suffix) {
    QFileDialog dialog(parent, title, suggested, filter);
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix(suffix);
    dialog.selectFile(suggested);
    return dialog.exec() == QDialog::Accepted ? dialog.selectedFiles().value(0) : QString();
}

}  // namespace

Prompts::SaveAnswer DialogPrompts::askSave(QWidget* parent, const QString& name) {
    QMessageBox box(QMessageBox::Warning,
                    tr("Save changes?"),
                    tr("Save the changes to “%1”?").arg(name),
                    QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel,
                    parent);
    box.setInformativeText(tr("Changes that are not saved will be lost."));
    box.setDefaultButton(QMessageBox::Save);
    box.setEscapeButton(QMessageBox::Cancel);
    switch (box.exec()) {
        case QMessageBox::Save:
            return SaveAnswer::Save;
        case QMessageBox::Discard:
            return SaveAnswer::Discard;
        default:
            return SaveAnswer::Cancel;
    }
}

bool DialogPrompts::askOverwrite(QWidget* parent, const QString& path) {
    QMessageBox box(QMessageBox::Warning,
                    tr("File changed"),
                    tr("“%1” has been changed by another program since it was opened.").arg(path),
                    QMessageBox::Cancel,
                    parent);
    QPushButton* replace = box.addButton(tr("Replace It"), QMessageBox::DestructiveRole);
    box.setDefaultButton(QMessageBox::Cancel);
    box.exec();
    return box.clickedButton() == replace;
}

Prompts::LostAnswer DialogPrompts::askLost(QWidget* parent, const LostWork& lost) {
    const QString when = QLocale().toString(lost.time.toLocalTime(), QLocale::ShortFormat);
    QMessageBox box(QMessageBox::Question,
                    tr("Unsaved work found"),
                    tr("“%1” was not saved when the program ended. Its last changes are of %2.")
                        .arg(lost.name, when),
                    QMessageBox::NoButton,
                    parent);
    QPushButton* open = box.addButton(tr("Open It"), QMessageBox::AcceptRole);
    QPushButton* discard = box.addButton(tr("Discard It"), QMessageBox::DestructiveRole);
    box.addButton(tr("Later"), QMessageBox::RejectRole);
    box.setDefaultButton(open);
    box.exec();
    return box.clickedButton() == open      ? LostAnswer::Open
           : box.clickedButton() == discard ? LostAnswer::Discard
                                            : LostAnswer::Later;
}

QString DialogPrompts::openPath(QWidget* parent, const QString& folder) {
    return QFileDialog::getOpenFileName(
        parent, tr("Open a Piece"), folder, tr("Pieces (*.shoulder);;All files (*)"));
}

QString DialogPrompts::savePath(QWidget* parent, const QString& suggested) {
    return saveWith(parent,
                    tr("Save the Piece"),
                    suggested,
                    tr("Pieces (*.shoulder)"),
                    QStringLiteral("shoulder"));
}

QString DialogPrompts::pdfPath(QWidget* parent, const QString& suggested) {
    return saveWith(
        parent, tr("Save a PDF"), suggested, tr("PDF documents (*.pdf)"), QStringLiteral("pdf"));
}

std::optional<QString> DialogPrompts::askText(QWidget* parent,
                                              const QString& title,
                                              const QString& label,
                                              const QString& text) {
    QInputDialog dialog(parent);
    dialog.setWindowTitle(title);
    dialog.setLabelText(label);
    dialog.setTextValue(text);
    dialog.resize(380, dialog.sizeHint().height());
    if (dialog.exec() != QDialog::Accepted) {
        return std::nullopt;
    }
    return dialog.textValue();
}

void DialogPrompts::tell(QWidget* parent, const QString& sentence) {
    QMessageBox box(QMessageBox::Warning,
                    QCoreApplication::applicationName(),
                    sentence,
                    QMessageBox::Ok,
                    parent);
    box.exec();
}

}  // namespace shoulderline
