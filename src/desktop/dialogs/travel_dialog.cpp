#include "desktop/dialogs/travel_dialog.hpp"

#include <wx/button.h>
#include <wx/choice.h>
#include <wx/msgdlg.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desktop/dialogs/draft_keeper.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"

namespace sparewell::desktop {
namespace {

constexpr int travel_width = 760;

}  // namespace

TravelDialog::TravelDialog(wxWindow* parent, const std::string& introduction, Answer answer,
                           WriteCard card, Lending lending)
    : Form{parent, said("Check a trip"), introduction, 2},
      answer_{std::move(answer)},
      card_{std::move(card)},
      lending_{std::move(lending)},
      following_{[this] { return [answer = answer_, asked = answers()] { return answer(asked); }; },
                 [this](const std::string& words) { told_->ChangeValue(to_wx(words)); }} {
  make_fields();
  add_action(said("Write travel &card..."), [this] { write_card(); });
  add_action(said("Le&nd the spares..."), [this] {
    lend();
  })->SetToolTip(said("Lend what lies on the shelf of what is to be packed"));
  finish(said("C&lose"), false);
  following_.follow({departure_, back_, delay_, kneeling_, wear_hours_, resupply_, with_, wanted_,
                     activity_, sweating_, sport_});
  departure_->SetFocus();
  show_answer();
}

void TravelDialog::make_fields() {
  const std::string usual = desk::as_usual;
  departure_ = add_text(said("&Departure"), "", said("The last day at home, such as 2026-12-24"));
  back_ = add_text(said("&Return"), "", said("The day of the return, such as 2027-01-07"));
  delay_ =
      add_text(said("Dela&y, days"), "", said("How much later the return may be; empty for none"));
  wanted_ = add_closed(said("&Wanted"), {desk::wanted_choices.begin(), desk::wanted_choices.end()},
                       0, said("The chance with which everything should last"));
  activity_ = add_closed(said("&Activity"), {usual, "K0", "K1", "K2", "K3", "K4"}, 0,
                         said("On the trip, as with more walking"));
  kneeling_ =
      add_text(said("&Kneeling, hours"), "", said("Hours a day on the trip; empty as usual"));
  wear_hours_ = add_text(said("Worn, &hours"), "", said("Hours a day on the trip; empty as usual"));
  sweating_ = add_closed(said("&Sweating"),
                         {usual, to_say("low"), to_say("normal"), to_say("high"), desk::in_water},
                         0, said("High where it is hot; in water, where the prosthesis gets wet"));
  sport_ = add_closed(said("&Impact sport"), {usual, to_say("yes"), to_say("no")}, 0,
                      said("On the trip"));
  resupply_ =
      add_text(said("&Parts there, days"), "",
               said("How soon a part that fails can be had at the place; empty: not at all"));
  with_ = add_text(
      said("Tra&vels with"), "",
      said("References of other patients who travel along and may share spares, with commas "
           "between them, such as P-0002, P-0007"));
  told_ = new wxTextCtrl{this,
                         wxID_ANY,
                         "",
                         wxDefaultPosition,
                         wxSize(FromDIP(travel_width), 16 * GetCharHeight()),
                         wxTE_MULTILINE | wxTE_READONLY | wxTE_BESTWRAP};
  set_accessible_name(*told_, said("What the check says"));
  add_wide(told_, 1);
}

desk::TravelAnswers TravelDialog::answers() const {
  return {from_wx(departure_->GetValue().Strip(wxString::both)),
          from_wx(back_->GetValue().Strip(wxString::both)),
          from_wx(delay_->GetValue().Strip(wxString::both)),
          value_of(*wanted_),
          value_of(*activity_),
          from_wx(kneeling_->GetValue().Strip(wxString::both)),
          from_wx(wear_hours_->GetValue().Strip(wxString::both)),
          value_of(*sweating_),
          value_of(*sport_),
          from_wx(resupply_->GetValue().Strip(wxString::both)),
          from_wx(with_->GetValue().Strip(wxString::both))};
}

void TravelDialog::show_answer() {
  following_.leave();
  told_->ChangeValue(to_wx(answer_(answers())));
}

void TravelDialog::write_card() {
  const auto written = card_(this, answers());
  if (written.empty()) return;
  show_answer();
  // What the check says anyway is not said twice.
  const auto told = told_->GetValue();
  if (told != to_wx(written)) told_->ChangeValue(to_wx(written) + "\n\n" + told);
}

void TravelDialog::lend() {
  show_answer();
  const auto question = lending_.question(answers());
  if (!question) {
    wxMessageBox(to_wx(question.error().sentence), said("Lend the spares"),
                 wxOK | wxICON_INFORMATION, this);
    return;
  }
  if (wxMessageBox(to_wx(*question), said("Lend the spares"), wxYES_NO | wxICON_QUESTION, this) !=
      wxYES) {
    return;
  }
  const auto refusal = lending_.lend(answers());
  if (refusal.empty()) return EndModal(wxID_OK);
  wxMessageBox(to_wx(refusal), said("Lend the spares"), wxOK | wxICON_WARNING, this);
}

}  // namespace sparewell::desktop
