#include "desktop/dialogs/asking_form.hpp"

#include <exception>

#include "desk/describe_failure.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

void AskingForm::finish_asking(const std::string& go, std::function<std::string()> attempt,
                               int width) {
  width_ = FromDIP(width);
  refusal_ = new WrappedLabel{this};
  refusal_->SetFont(refusal_->GetFont().Bold());
  add_wide(refusal_, 0);
  finish(go);
  tell("");
  Bind(
      wxEVT_BUTTON,
      [this, attempt = std::move(attempt)](wxCommandEvent& event) {
        std::string sentence;
        try {
          sentence = attempt();
        } catch (const std::exception&) {
          sentence = desk::describe_failure(std::current_exception());
        }
        if (sentence.empty()) {
          event.Skip();
        } else {
          tell(sentence);
        }
      },
      wxID_OK);
}

void AskingForm::tell(const std::string& sentence) {
  refusal_->set_text(sentence);
  refusal_->wrap_to(width_);
  // Not hidden when empty: the dialog is as wide from the beginning.
  refusal_->Show();
  refusal_->SetMinSize({width_, refusal_->GetMinSize().y});
  Fit();
}

}  // namespace sparewell::desktop
