/// A form whose answer is tried out before it closes; a refusal stands above its buttons.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <vector>

#include "desktop/dialogs/draft_keeper.hpp"
#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

class WrappedLabel;

class AskingForm : public Form {
 public:
  using Form::Form;

 protected:
  /// What is typed into `fields` is kept until it is booked or discarded, see DraftKeeper; an entry
  /// that was left is filled in, and said above the buttons. Call before finish_asking.
  void keep_draft(std::vector<wxWindow*> fields, const std::filesystem::path& clinic_file,
                  const std::string& key);
  /// For a form that stays open when its answer was taken.
  void begin_draft_again();
  /// Makes the line for refusals, `width` wide at least, and calls finish(). `attempt` gives the
  /// refusal, or "" when the form may close.
  void finish_asking(const std::string& go, std::function<std::string()> attempt, int width = 480);
  void tell(const std::string& sentence);

 private:
  void offer_draft(wxWindow* first);

  std::unique_ptr<DraftKeeper> draft_;
  WrappedLabel* refusal_ = nullptr;
  int width_ = 0;
};

}  // namespace sparewell::desktop
