#include "tests/bench/gui_watch.h"

#include <QApplication>
#include <QEvent>
#include <algorithm>
#include <memory>

namespace bench {

double millisecondsSince(Clock::time_point start)
{
    return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

double quantile(std::vector<double> values, double share)
{
    if (values.empty())
        return 0;
    const auto rank =
        static_cast<std::size_t>(share * static_cast<double>(values.size() - 1) + 0.5);
    std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(rank),
                     values.end());
    return values[rank];
}

Heartbeat::Heartbeat(QObject* in_the_thread)
    : receiver_(in_the_thread), thread_([this] {
          const auto answered = std::make_shared<std::atomic<bool>>(true);
          while (!ends_) {
              std::this_thread::sleep_for(std::chrono::milliseconds(4));
              if (!answered->exchange(false))
                  continue;  // the last one is still waited for
              const auto asked = Clock::now();
              QMetaObject::invokeMethod(
                  receiver_,
                  [this, asked, answered] {
                      const std::lock_guard lock(guard_);
                      waited_.push_back(millisecondsSince(asked));
                      *answered = true;
                  },
                  Qt::QueuedConnection);
          }
      })
{
}

Heartbeat::~Heartbeat()
{
    ends_ = true;
    thread_.join();
    QCoreApplication::removePostedEvents(receiver_);
}

std::vector<double> Heartbeat::milliseconds() const
{
    const std::lock_guard lock(guard_);
    return waited_;
}

PaintWatch::PaintWatch(QObject* part_of) : root_(part_of)
{
    qApp->installEventFilter(this);
}

bool PaintWatch::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::Paint)
        for (QObject* part = watched; part; part = part->parent())
            if (part == root_) {
                ++painted;
                // Filters come before the painting itself: the time is taken once that is done.
                QMetaObject::invokeMethod(
                    this, [this] { last = Clock::now(); }, Qt::QueuedConnection);
                break;
            }
    return false;
}

}  // namespace bench
