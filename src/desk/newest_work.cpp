#include "desk/newest_work.hpp"

namespace sparewell::desk {

NewestWork::NewestWork(std::unique_ptr<Worker> worker, Keep keep)
    : keep_{keep}, worker_{std::move(worker)} {}

void NewestWork::ask(std::function<void()> work, std::function<void(std::exception_ptr)> answer) {
  Question question{std::move(work), std::move(answer), forgotten_};
  if (worker_->busy()) {
    waiting_ = std::move(question);
  } else {
    start(std::move(question));
  }
}

void NewestWork::forget() {
  ++forgotten_;
  waiting_.reset();
}

void NewestWork::start(Question question) {
  auto shared = std::make_shared<Question>(std::move(question));
  worker_->start({"", false, [shared](const JobControl&) { shared->work(); },
                  [this, shared](const JobEnd& end) { ended(*shared, end); }});
}

void NewestWork::ended(const Question& question, const JobEnd& end) {
  const bool newer = waiting_.has_value();
  if (newer) {
    auto next = std::move(*waiting_);
    waiting_.reset();
    start(std::move(next));
  }
  if (question.since != forgotten_ || (newer && keep_ == Keep::newest)) return;
  question.answer(end.failure);
}

}  // namespace sparewell::desk
