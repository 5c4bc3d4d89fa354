#pragma once

#include <QObject>
#include <atomic>
#include <chrono>
#include <mutex>
#include <thread>
#include <vector>

namespace bench {

using Clock = std::chrono::steady_clock;

double millisecondsSince(Clock::time_point start);

// The value that this share of the values does not exceed; 0 for none.
double quantile(std::vector<double> values, double share);

// Asks the window's thread for a sign of life every few milliseconds and notes how long each took:
// as long as the thread was blocked.
class Heartbeat {
public:
    explicit Heartbeat(QObject* in_the_thread);
    ~Heartbeat();
    std::vector<double> milliseconds() const;

private:
    QObject* receiver_;
    std::atomic<bool> ends_{false};
    mutable std::mutex guard_;
    std::vector<double> waited_;
    std::thread thread_;
};

// Notes when any of a widget's parts was painted last.
class PaintWatch : public QObject {
public:
    explicit PaintWatch(QObject* part_of);
    int painted = 0;
    Clock::time_point last{};

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QObject* root_;
};

}  // namespace bench
