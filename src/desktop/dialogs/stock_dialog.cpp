#include "desktop/dialogs/stock_dialog.hpp"

#include <algorithm>

#include <fmt/format.h>
#include <wx/button.h>
#include <wx/choice.h>
#include <wx/combobox.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desk/describe_failure.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

int position_of(const desk::FormField& field) {
  const auto found = std::ranges::find(field.choices, field.value);
  return static_cast<int>(found - field.choices.begin());
}

}  // namespace

StockDialog::StockDialog(wxWindow* parent, desk::StockForm form, desk::ClinicFile file)
    : Form{parent, form.title, form.intro}, form_{std::move(form)}, file_{std::move(file)} {
  for (const auto& field : form_.fields) {
    if (field.closed) {
      fields_.push_back(add_choice(field.label, field.choices, position_of(field), field.help));
    } else if (!field.choices.empty()) {
      fields_.push_back(add_combo(field.label, field.choices, field.value, field.help));
    } else {
      fields_.push_back(add_text(field.label, field.value, field.help));
    }
  }
  // The sentence above the fields says whom and what it is about.
  draft_ = std::make_unique<DraftKeeper>(*this, fields_, file_.path,
                                         fmt::format("{}: {}", form_.title, form_.intro));
  if (!draft_->words().empty()) offer_draft();
  refusal_ = new wxStaticText{this, wxID_ANY, ""};
  refusal_->SetFont(refusal_->GetFont().Bold());
  add_wide(refusal_, 0);
  finish(form_.go);
  refusal_->Hide();
  Bind(wxEVT_BUTTON, &StockDialog::on_ok, this, wxID_OK);
  if (auto* first = dynamic_cast<wxTextCtrl*>(fields_.front())) first->SelectAll();
  fields_.front()->SetFocus();
}

std::vector<std::string> StockDialog::answers() const {
  std::vector<std::string> given;
  for (const auto* field : fields_) {
    given.push_back(value_of(*field));
    auto& text = given.back();
    while (!text.empty() && text.back() == ' ') text.pop_back();
    text.erase(0, std::min(text.find_first_not_of(' '), text.size()));
  }
  return given;
}

void StockDialog::offer_draft() {
  auto* words = new wxStaticText{this, wxID_ANY, to_wx(draft_->words())};
  words->SetFont(words->GetFont().Bold());
  add_wide(words, 0);
  auto* discard = add_action(said("D&iscard it"), [this, words] {
    draft_->discard();
    words->Hide();
    fields_.front()->SetFocus();
    Layout();
  });
  discard->SetToolTip(to_wx(sparewell::say("Empties the form of what was left unfinished")));
}

void StockDialog::tell(const std::string& sentence) {
  refusal_->SetLabelText(to_wx(sentence));
  refusal_->Wrap(std::max(GetClientSize().x - FromDIP(24), FromDIP(300)));
  refusal_->Show();
  Layout();
  Fit();
}

void StockDialog::on_ok(wxCommandEvent& event) {
  try {
    auto booked = desk::book_form(file_, form_, answers());
    if (!booked) return tell(booked.error().sentence);
    booked_ = std::move(*booked);
    draft_->booked();
    event.Skip();
  } catch (...) {
    tell(desk::describe_failure(std::current_exception()));
  }
}

}  // namespace sparewell::desktop
