#include "desktop/dialogs/ways_dialog.hpp"

#include <algorithm>

#include <wx/choice.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

std::vector<std::string> words_of(const std::vector<desk::WaysChoice>& choices) {
  std::vector<std::string> made;
  for (const auto& each : choices) made.push_back(each.words);
  return made;
}

int position_of(const std::vector<desk::WaysChoice>& choices, const std::string& code) {
  const auto found = std::ranges::find(choices, code, &desk::WaysChoice::code);
  return found == choices.end() ? 0 : static_cast<int>(found - choices.begin());
}

const std::string& chosen_of(const std::vector<desk::WaysChoice>& choices, const wxChoice* field) {
  return choices[static_cast<std::size_t>(std::max(field->GetSelection(), 0))].code;
}

}  // namespace

WaysDialog::WaysDialog(wxWindow* parent, const desk::Ways& ways)
    : Form{parent, said("Language and units"),
           said("Records and files stay as they are; only what the window shows changes.")},
      languages_{desk::program_languages()},
      countries_{desk::country_choices(ways.language)} {
  language_ =
      add_choice(said("&Language"), words_of(languages_), position_of(languages_, ways.language),
                 said("Of the window, its help and the lists that it writes"));
  country_ = add_choice(said("&Dates and amounts"), words_of(countries_),
                        position_of(countries_, ways.country),
                        said("As people of that country write them"));
  length_ =
      add_choice(said("L&engths of a limb"), {said("in centimetres"), said("in inches")},
                 ways.inches ? 1 : 0, said("Measured lengths are kept in centimetres either way"));
  language_->Bind(wxEVT_CHOICE,
                  [this](wxCommandEvent&) { show_countries(chosen_of(countries_, country_)); });
  finish(said("&Keep"));
}

desk::Ways WaysDialog::ways() const {
  return {chosen_of(languages_, language_), chosen_of(countries_, country_),
          length_->GetSelection() == 1};
}

void WaysDialog::show_countries(const std::string& chosen) {
  countries_ = desk::country_choices(chosen_of(languages_, language_));
  wxArrayString words;
  for (const auto& each : countries_) words.Add(to_wx(each.words));
  country_->Set(words);
  country_->SetSelection(position_of(countries_, chosen));
}

}  // namespace sparewell::desktop
