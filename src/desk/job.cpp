#include "desk/job.hpp"

namespace sparewell::desk {
namespace {

JobEnd do_work(const Job& job, const JobControl& control) {
  JobEnd end;
  try {
    job.work(control);
  } catch (...) {
    end.failure = std::current_exception();
  }
  end.stopped = control.stop.stop_requested();
  return end;
}

}  // namespace

std::string progress_words(const JobProgress& progress) {
  auto words = progress.what + "\u2026";
  if (progress.left) words += "  " + remaining_words(*progress.left);
  return words;
}

ImmediateWorker::ImmediateWorker(std::function<void(const JobProgress&)> watch)
    : watch_{std::move(watch)} {}

bool ImmediateWorker::start(Job job) {
  if (busy_) return false;
  busy_ = true;
  stop_ = {};
  const auto say = [this](const JobProgress& progress) {
    if (watch_) watch_(progress);
  };
  say({job.what, std::nullopt});
  const auto end = do_work(job, {say, stop_.get_token()});
  busy_ = false;
  job.finish(end);
  return true;
}

BackgroundWorker::BackgroundWorker(Post post, std::function<void(const JobProgress&)> watch)
    : post_{std::move(post)}, watch_{std::move(watch)}, alive_{std::make_shared<bool>(true)} {}

BackgroundWorker::~BackgroundWorker() {
  *alive_ = false;
  // The thread is the last member, so it is stopped and joined before anything it uses goes.
}

bool BackgroundWorker::start(Job job) {
  if (busy_) return false;
  busy_ = true;
  watch_({job.what, std::nullopt});
  thread_ =
      std::jthread{[this, job = std::move(job)](const std::stop_token& stop) { run(job, stop); }};
  return true;
}

void BackgroundWorker::run(const Job& job, const std::stop_token& stop) {
  using Clock = std::chrono::steady_clock;
  auto last_said = Clock::time_point{};
  const auto started = Clock::now();
  RemainingTime remaining;
  const auto say = [&](JobProgress progress) {
    const auto now = Clock::now();
    if (now - last_said < std::chrono::milliseconds{100}) return;
    last_said = now;
    progress.left = remaining.after(now - started, progress.done);
    post_if_alive([this, progress = std::move(progress)] { watch_(progress); });
  };
  const auto end = do_work(job, {say, stop});
  post_if_alive([this, end, finish = job.finish] {
    busy_ = false;
    finish(end);
  });
}

void BackgroundWorker::post_if_alive(std::function<void()> call) const {
  post_([alive = alive_, call = std::move(call)] {
    if (*alive) call();
  });
}

}  // namespace sparewell::desk
