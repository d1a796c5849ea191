/// What a form says about its fields while they are filled in, worked out in the background.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include <wx/timer.h>

#include "desk/job.hpp"

class wxWindow;

namespace sparewell::desktop {

class FollowingAnswer {
 public:
  using Work = std::function<std::string()>;
  /// `ask` reads the fields and gives the work, which another thread does: it must not touch the
  /// window. `show` gets what the work answers, or why it failed.
  FollowingAnswer(std::function<Work()> ask, std::function<void(const std::string&)> show);

  /// The answer follows these when typing rests, and at once where something is chosen.
  void follow(const std::vector<wxWindow*>& fields);
  void ask();
  /// An answer that is still worked out is not shown any more.
  void leave();

 private:
  std::function<Work()> ask_;
  std::function<void(const std::string&)> show_;
  wxTimer pause_;
  int question_ = 0;  ///< which one is asked
  std::unique_ptr<desk::Worker> worker_;
};

}  // namespace sparewell::desktop
