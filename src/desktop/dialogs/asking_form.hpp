/// A form whose answer is tried out before it closes; a refusal stands above its buttons.
#pragma once

#include <functional>

#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

class WrappedLabel;

class AskingForm : public Form {
 public:
  using Form::Form;

 protected:
  /// Makes the line for refusals, `width` wide at least, and calls finish(). `attempt` gives the
  /// refusal, or "" when the form may close.
  void finish_asking(const std::string& go, std::function<std::string()> attempt, int width = 480);
  void tell(const std::string& sentence);

 private:
  WrappedLabel* refusal_ = nullptr;
  int width_ = 0;
};

}  // namespace sparewell::desktop
