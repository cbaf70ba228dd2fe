#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "ui/document/recovery.h"

class QWidget;

namespace shoulderline {

// Everything that the window asks or tells in a dialog, so that tests can answer instead.
class Prompts {
  public:
    enum class SaveAnswer { Save, Discard, Cancel };
    enum class LostAnswer { Open, Discard, Later };

    virtual ~Prompts() = default;
    // The piece `name` has changes that are not saved.
    virtual SaveAnswer askSave(QWidget* parent, const QString& name) = 0;
    // The file was changed by another program since; true to write over it.
    virtual bool askOverwrite(QWidget* parent, const QString& path) = 0;
    virtual LostAnswer askLost(QWidget* parent, const LostWork& lost) = 0;
    // Empty where the person gives it up.
    virtual QString openPath(QWidget* parent, const QString& folder) = 0;
    virtual QString savePath(QWidget* parent, const QString& suggested) = 0;
    virtual QString pdfPath(QWidget* parent, const QString& suggested) = 0;
    virtual std::optional<QString> askText(QWidget* parent,
                                           const QString& title,
                                           const QString& label,
                                           const QString& text) = 0;
    virtual void tell(QWidget* parent, const QString& sentence) = 0;
};

// The prompts a person sees.
class DialogPrompts final : public Prompts {
  public:
    SaveAnswer askSave(QWidget* parent, const QString& name) override;
    bool askOverwrite(QWidget* parent, const QString& path) override;
    LostAnswer askLost(QWidget* parent, const LostWork& lost) override;
    QString openPath(QWidget* parent, const QString& folder) override;
    QString savePath(QWidget* parent, const QString& suggested) override;
    QString pdfPath(QWidget* parent, const QString& suggested) override;
    std::optional<QString> askText(QWidget* parent,
                                   const QString& title,
                                   const QString& label,
                                   const QString& text) override;
    void tell(QWidget* parent, const QString& sentence) override;
};

}  // namespace shoulderline
