#include "ui/look/afterglow.h"

#include <algorithm>

namespace shoulderline {

namespace {

constexpr int kStaysMs = 5000;
constexpr int kFadesMs = 2500;

}  // namespace

Afterglow::Afterglow(bool hasMotion, QObject* parent) : QObject(parent), hasMotion_(hasMotion) {
    connect(&timer_, &QTimer::timeout, this, &Afterglow::tick);
}

void Afterglow::start() {
    level_ = 1.0;
    if (hasMotion_) {
        since_.start();
        timer_.start(kStaysMs);
    }
    Q_EMIT levelChanged();
}

void Afterglow::stop() {
    timer_.stop();
    level_ = 0.0;
    Q_EMIT levelChanged();
}

void Afterglow::tick() {
    constexpr int kFrameMs = 100;
    timer_.setInterval(kFrameMs);
    const double faded = static_cast<double>(since_.elapsed() - kStaysMs) / kFadesMs;
    level_ = std::clamp(1.0 - faded, 0.0, 1.0);
    if (level_ <= 0.0) {
        timer_.stop();
    }
    Q_EMIT levelChanged();
}

}  // namespace shoulderline
