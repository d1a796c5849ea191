#include "desktop/dialogs/asking_form.hpp"

#include <exception>

#include <wx/button.h>
#include <wx/stattext.h>

#include "clinic/say.hpp"
#include "desk/describe_failure.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

void AskingForm::keep_draft(std::vector<wxWindow*> fields, const std::filesystem::path& clinic_file,
                            const std::string& key) {
  auto* first = fields.front();
  draft_ = std::make_unique<DraftKeeper>(*this, std::move(fields), clinic_file, key);
  if (!draft_->words().empty()) offer_draft(first);
}

void AskingForm::offer_draft(wxWindow* first) {
  auto* words = new wxStaticText{this, wxID_ANY, to_wx(draft_->words())};
  words->SetFont(words->GetFont().Bold());
  add_wide(words, 0);
  auto* discard = add_action(said("D&iscard it"), [this, words, first] {
    draft_->discard();
    words->Hide();
    first->SetFocus();
    Layout();
  });
  discard->SetToolTip(to_wx(said("Empties the form of what was left unfinished")));
}

void AskingForm::begin_draft_again() {
  if (draft_) draft_->begin_again();
}

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
          if (draft_) draft_->booked();
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
  refusal_->SetMinSize({width_, refusal_->GetBestSize().y});
  Fit();
}

}  // namespace sparewell::desktop
