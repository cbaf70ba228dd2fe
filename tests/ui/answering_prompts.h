#pragma once

#include <QStringList>
#include <optional>

#include "ui/prompts/prompts.h"

namespace shoulderline::testing {

// Answers what is asked, and keeps what was told.
class AnsweringPrompts final : public Prompts {
  public:
    SaveAnswer saveAnswer = SaveAnswer::Discard;
    LostAnswer lostAnswer = LostAnswer::Open;
    QString path;
    std::optional<QString> text;
    QStringList told;
    int asked = 0;

    SaveAnswer askSave(QWidget*, const QString&) override {
        ++asked;
        return saveAnswer;
    }
    bool askOverwrite(QWidget*, const QString&) override { return true; }
    LostAnswer askLost(QWidget*, const LostWork&) override { return lostAnswer; }
    QString openPath(QWidget*, const QString&) override { return path; }
    QString savePath(QWidget*, const QString&) override { return path; }
    QString pdfPath(QWidget*, const QString&) override { return path; }
    std::optional<QString> askText(QWidget*,
                                   const QString&,
                                   const QString&,
                                   const QString&) override {
        return text;
    }
    void tell(QWidget*, const QString& sentence) override { told << sentence; }
};

}  // namespace shoulderline::testing
