/// Work that takes long enough to notice, away from the window.
#pragma once

#include <chrono>
#include <exception>
#include <functional>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <thread>

#include "desk/remaining_time.hpp"

namespace sparewell::desk {

/// What is going on: words, and the part done from 0 to 1 where it is known.
struct JobProgress {
  std::string what;
  std::optional<double> done;
  std::optional<std::chrono::duration<double>> left = {};  ///< time; the worker fills it in
};

/// "Playing the policy…  about 20 seconds left".
[[nodiscard]] std::string progress_words(const JobProgress& progress);

/// Handed to the work while it runs.
struct JobControl {
  std::function<void(JobProgress)> say;  ///< may be called as often as the work likes
  std::stop_token stop;                  ///< the work looks at it when it can end early
};

/// How a job ended. With a failure nothing else is known; a stopped job may have done a part.
struct JobEnd {
  bool stopped = false;
  std::exception_ptr failure;
};

/// The state that work and finish share must be owned by both, for example through a shared_ptr.
struct Job {
  std::string what;                             ///< "Reading the clinic file"
  bool can_stop = false;                        ///< true when the work looks at the stop token
  std::function<void(const JobControl&)> work;  ///< on the worker's thread; may throw
  std::function<void(const JobEnd&)> finish;    ///< on the window's thread, always called once
};

/// Runs one job at a time.
class Worker {
 public:
  virtual ~Worker() = default;
  /// Starts the job; false, and the job is not taken, while another is under way.
  virtual bool start(Job job) = 0;
  [[nodiscard]] virtual bool busy() const = 0;
  /// Asks the job under way to stop; it ends when it next looks.
  virtual void ask_to_stop() = 0;
};

/// Does the work at once on the calling thread: the twin for tests and for programs without a
/// window.
class ImmediateWorker : public Worker {
 public:
  explicit ImmediateWorker(std::function<void(const JobProgress&)> watch = {});
  bool start(Job job) override;
  [[nodiscard]] bool busy() const override { return busy_; }
  void ask_to_stop() override { stop_.request_stop(); }

 private:
  std::function<void(const JobProgress&)> watch_;
  std::stop_source stop_;
  bool busy_ = false;
};

/// Does the work on a thread of its own. `post` runs a function later on the window's thread, and
/// may be called from any thread. Progress is passed on at most ten times a second. After
/// destruction nothing of it is called any more; the destructor asks the job to stop and waits for
/// it.
class BackgroundWorker : public Worker {
 public:
  using Post = std::function<void(std::function<void()>)>;
  BackgroundWorker(Post post, std::function<void(const JobProgress&)> watch);
  ~BackgroundWorker() override;
  BackgroundWorker(const BackgroundWorker&) = delete;
  BackgroundWorker& operator=(const BackgroundWorker&) = delete;

  bool start(Job job) override;
  [[nodiscard]] bool busy() const override { return busy_; }
  void ask_to_stop() override { thread_.request_stop(); }

 private:
  void run(const Job& job, const std::stop_token& stop);
  void post_if_alive(std::function<void()> call) const;

  Post post_;
  std::function<void(const JobProgress&)> watch_;
  std::shared_ptr<bool> alive_;  ///< posted calls look at it, on the window's thread
  bool busy_ = false;            ///< of the window's thread
  std::jthread thread_;
};

}  // namespace sparewell::desk
