#include "desktop/dialogs/draft_keeper.hpp"

#include <wx/checkbox.h>
#include <wx/choice.h>
#include <wx/clntdata.h>
#include <wx/combobox.h>
#include <wx/datetime.h>
#include <wx/textctrl.h>

#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

constexpr int keep_after_ms = 700;
constexpr auto ticked = "yes";

std::string word_of(const wxChoice& choice, unsigned position) {
  if (!choice.HasClientObjectData()) return from_wx(choice.GetString(position));
  return from_wx(
      dynamic_cast<const wxStringClientData&>(*choice.GetClientObject(position)).GetData());
}

void choose_word(wxChoice& choice, const std::string& word) {
  for (unsigned i = 0; i < choice.GetCount(); ++i) {
    if (word_of(choice, i) == word) return choice.SetSelection(static_cast<int>(i));
  }
}

void set_value(wxWindow& field, const std::string& value) {
  // A combo box is a choice too in this toolkit.
  if (auto* combo = dynamic_cast<wxComboBox*>(&field)) {
    combo->SetValue(to_wx(value));
  } else if (auto* choice = dynamic_cast<wxChoice*>(&field)) {
    choose_word(*choice, value);
  } else if (auto* box = dynamic_cast<wxCheckBox*>(&field)) {
    box->SetValue(value == ticked);
  } else if (auto* text = dynamic_cast<wxTextCtrl*>(&field)) {
    text->SetValue(to_wx(value));
  }
}

}  // namespace

std::string value_of(const wxWindow& field) {
  if (const auto* combo = dynamic_cast<const wxComboBox*>(&field)) {
    return from_wx(combo->GetValue());
  }
  if (const auto* choice = dynamic_cast<const wxChoice*>(&field)) {
    const int chosen = choice->GetSelection();
    return chosen < 0 ? std::string{} : word_of(*choice, static_cast<unsigned>(chosen));
  }
  if (const auto* box = dynamic_cast<const wxCheckBox*>(&field)) {
    return box->GetValue() ? ticked : "";
  }
  return from_wx(dynamic_cast<const wxTextCtrl&>(field).GetValue());
}

DraftKeeper::DraftKeeper(wxDialog& dialog, std::vector<wxWindow*> fields,
                         const std::filesystem::path& clinic_file, std::string key)
    : fields_{std::move(fields)}, drafts_{clinic_file}, key_{std::move(key)} {
  first_ = typed();
  if (const auto draft = drafts_.find(key_, fields_.size())) {
    fill(draft->answers);
    words_ = desk::draft_words(*draft, from_wx(wxDateTime::Now().FormatISODate()));
  }
  pause_.Bind(wxEVT_TIMER, [this](wxTimerEvent&) { keep(); });
  const auto changed = [this](wxCommandEvent& event) {
    event.Skip();
    if (!booked_) pause_.StartOnce(keep_after_ms);
  };
  dialog.Bind(wxEVT_TEXT, changed);
  dialog.Bind(wxEVT_CHOICE, changed);
  dialog.Bind(wxEVT_COMBOBOX, changed);
  dialog.Bind(wxEVT_CHECKBOX, changed);
  dialog.Bind(
      wxEVT_BUTTON,
      [this](wxCommandEvent& event) {
        event.Skip();
        keep();
      },
      wxID_CANCEL);
}

std::vector<std::string> DraftKeeper::typed() const {
  std::vector<std::string> values;
  for (const auto* field : fields_) values.push_back(value_of(*field));
  return values;
}

void DraftKeeper::fill(const std::vector<std::string>& values) {
  for (std::size_t i = 0; i < fields_.size(); ++i) set_value(*fields_[i], values[i]);
}

void DraftKeeper::keep() {
  pause_.Stop();
  if (booked_) return;
  const auto now = typed();
  if (now == first_) return drafts_.discard(key_);
  drafts_.keep(key_, {from_wx(wxDateTime::Now().Format("%Y-%m-%d %H:%M")), now});
}

void DraftKeeper::discard() {
  fill(first_);
  keep();
}

void DraftKeeper::begin_again() {
  pause_.Stop();
  first_ = typed();
  drafts_.discard(key_);
}

void DraftKeeper::booked() {
  pause_.Stop();
  booked_ = true;
  drafts_.discard(key_);
}

}  // namespace sparewell::desktop
