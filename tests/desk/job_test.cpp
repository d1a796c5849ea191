#include "desk/job.hpp"

#include <condition_variable>
#include <deque>
#include <mutex>

#include <doctest/doctest.h>

namespace job_test {

using namespace sparewell::desk;

namespace {

/// A window's event loop in small: calls wait here until the test runs them.
class Loop {
 public:
  void post(std::function<void()> call) {
    {
      const std::lock_guard lock{mutex_};
      calls_.push_back(std::move(call));
    }
    ready_.notify_one();
  }
  /// Runs calls until `done`.
  void run_until(const std::function<bool()>& done) {
    while (!done()) {
      std::unique_lock lock{mutex_};
      ready_.wait(lock, [&] { return !calls_.empty(); });
      auto call = std::move(calls_.front());
      calls_.pop_front();
      lock.unlock();
      call();
    }
  }

 private:
  std::mutex mutex_;
  std::condition_variable ready_;
  std::deque<std::function<void()>> calls_;
};

struct Immediate {
  ImmediateWorker worker;
  void run_until(const std::function<bool()>& done) { REQUIRE(done()); }
};

struct Background {
  Loop loop;
  BackgroundWorker worker{[this](std::function<void()> call) { loop.post(std::move(call)); },
                          [](const JobProgress&) {}};
  void run_until(const std::function<bool()>& done) { loop.run_until(done); }
};

}  // namespace

TEST_CASE_TEMPLATE("Work is done before its finish is called, and then another job may start",
                   Setup, Immediate, Background) {
  Setup setup;
  auto result = std::make_shared<int>(0);
  bool finished = false;
  CHECK(setup.worker.start({"count", false, [result](const JobControl&) { *result = 42; },
                            [&](const JobEnd& end) {
                              CHECK_FALSE(end.failure);
                              CHECK_FALSE(setup.worker.busy());
                              CHECK(*result == 42);
                              finished = true;
                            }}));
  setup.run_until([&] { return finished; });
}

TEST_CASE_TEMPLATE("A failure of the work reaches its finish", Setup, Immediate, Background) {
  Setup setup;
  bool failed = false;
  setup.worker.start({"fail", false, [](const JobControl&) { throw std::runtime_error{"no"}; },
                      [&](const JobEnd& end) { failed = end.failure != nullptr; }});
  setup.run_until([&] { return failed; });
}

TEST_CASE("Work that is asked to stop sees it and says so at its end") {
  Background setup;
  std::optional<bool> stopped;
  setup.worker.start({"wait", true,
                      [](const JobControl& control) {
                        while (!control.stop.stop_requested()) std::this_thread::yield();
                      },
                      [&](const JobEnd& end) { stopped = end.stopped; }});
  CHECK(setup.worker.busy());
  CHECK_FALSE(setup.worker.start({"second", false, {}, {}}));
  setup.worker.ask_to_stop();
  setup.run_until([&] { return stopped.has_value(); });
  CHECK(*stopped);
}

TEST_CASE("Nothing is called after the worker has gone, not even what was posted before") {
  Loop loop;
  bool called = false;
  {
    BackgroundWorker worker{[&](std::function<void()> call) { loop.post(std::move(call)); },
                            [](const JobProgress&) {}};
    worker.start({"end", false, [](const JobControl&) {}, [&](const JobEnd&) { called = true; }});
  }
  bool reached = false;
  loop.post([&] { reached = true; });
  loop.run_until([&] { return reached; });
  CHECK_FALSE(called);
}

}  // namespace job_test
