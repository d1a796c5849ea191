/// Work that is asked for again before it is done, as while a slider is dragged: the newest
/// question wins.
#pragma once

#include <exception>
#include <functional>
#include <memory>
#include <optional>

#include "desk/job.hpp"

namespace sparewell::desk {

/// Of the window's thread, except what `work` does.
class NewestWork {
 public:
  enum class Keep {
    answers,  ///< an answer is given although a newer question waits, so that something moves
    newest    ///< it is dropped then
  };
  NewestWork(std::unique_ptr<Worker> worker, Keep keep);

  /// `work` runs on the worker's thread as soon as it is free; `answer` is called afterwards, with
  /// what went wrong or nullptr. A question that has not begun when another comes is dropped.
  void ask(std::function<void()> work, std::function<void(std::exception_ptr)> answer);
  /// Nothing that was asked so far is answered any more.
  void forget();

 private:
  struct Question {
    std::function<void()> work;
    std::function<void(std::exception_ptr)> answer;
    unsigned since = 0;  ///< how often was forgotten before
  };
  void start(Question question);
  void ended(const Question& question, const JobEnd& end);

  Keep keep_;
  unsigned forgotten_ = 0;
  std::optional<Question> waiting_;
  std::unique_ptr<Worker> worker_;  ///< last, so that it goes first
};

}  // namespace sparewell::desk
