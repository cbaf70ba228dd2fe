#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <QTimer>

namespace shoulderline {

// The mark that a change leaves: full at once, then fading away. Where the system asks for no
// motion it stays as it is until the next change.
class Afterglow final : public QObject {
    Q_OBJECT
  public:
    explicit Afterglow(bool hasMotion, QObject* parent = nullptr);
    void start();
    void stop();
    // 1 just after a change, 0 when it has faded.
    [[nodiscard]] double level() const { return level_; }

  Q_SIGNALS:
    void levelChanged();

  private:
    void tick();

    bool hasMotion_;
    double level_ = 0.0;
    QElapsedTimer since_;
    QTimer timer_;
};

}  // namespace shoulderline
