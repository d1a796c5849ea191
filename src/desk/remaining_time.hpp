/// How long a job will still take, from how far it has come.
#pragma once

#include <chrono>
#include <optional>
#include <string>

namespace sparewell::desk {

/// Fed with the part done as it grows. Says nothing in the first seconds and before a twentieth is
/// done, because the first steps of a job say little about the rest. The rate is an exponential
/// average over the last ten seconds or so, mixed with the mean rate since the start, so that one
/// slow step does not throw the estimate about.
class RemainingTime {
 public:
  using Seconds = std::chrono::duration<double>;

  /// Forgets everything: another job begins.
  void restart();
  /// `since_start` is the time since the job began. A part that goes back begins anew, because
  /// another stage of the work counts from 0 then. Empty while nothing can be said.
  std::optional<Seconds> after(Seconds since_start, std::optional<double> done);

 private:
  struct Point {
    Seconds time{};
    double done = 0;
  };
  std::optional<Point> start_;
  Point last_;
  std::optional<double> rate_;  ///< part a second, lately
};

/// "about 20 seconds left"; rounded the more coarsely the longer it is.
[[nodiscard]] std::string remaining_words(RemainingTime::Seconds left);

}  // namespace sparewell::desk
