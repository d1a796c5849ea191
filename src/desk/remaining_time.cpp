#include "desk/remaining_time.hpp"

#include <cmath>

#include "clinic/say.hpp"

namespace sparewell::desk {
namespace {

using Seconds = RemainingTime::Seconds;

constexpr Seconds silent{3};
constexpr double least_done = 0.05;
constexpr Seconds memory{10};  ///< of the average rate

}  // namespace

void RemainingTime::restart() {
  start_.reset();
  rate_.reset();
}

std::optional<Seconds> RemainingTime::after(Seconds since_start, std::optional<double> done) {
  if (!done) return std::nullopt;
  const Point now{since_start, *done};
  if (!start_ || now.done < last_.done) {
    start_ = last_ = now;
    rate_.reset();
    return std::nullopt;
  }
  const auto passed = now.time - last_.time;
  if (passed > Seconds{0} && now.done > last_.done) {
    const double rate = (now.done - last_.done) / passed.count();
    const double weight = 1 - std::exp(-passed / memory);
    rate_ = rate_ ? *rate_ + weight * (rate - *rate_) : rate;
    last_ = now;
  }
  const auto running = now.time - start_->time;
  const double grown = now.done - start_->done;
  if (running < silent || grown < least_done || !rate_) return std::nullopt;
  const double mean = grown / running.count();
  const double left = std::max(0.0, 1 - now.done);
  // A step that takes long makes the mean rate fall while nothing is reported.
  return Seconds{left / ((mean + *rate_) / 2)};
}

std::string remaining_words(Seconds left) {
  const double seconds = left.count();
  if (seconds < 5) return say("a few seconds left");
  if (seconds < 55) {
    return say("about {} seconds left", 5 * static_cast<int>(std::lround(seconds / 5)));
  }
  const auto minutes = static_cast<unsigned long>(std::max(1L, std::lround(seconds / 60)));
  if (minutes < 90) return say_n("about {} minute left", "about {} minutes left", minutes, minutes);
  const auto hours = static_cast<unsigned long>(std::lround(seconds / 3600));
  return say_n("about {} hour left", "about {} hours left", hours, hours);
}

}  // namespace sparewell::desk
