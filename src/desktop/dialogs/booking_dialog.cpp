#include "desktop/dialogs/booking_dialog.hpp"

#include <fmt/format.h>
#include <wx/choice.h>
#include <wx/combobox.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desktop/dialogs/draft_keeper.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/aside.hpp"

namespace sparewell::desktop {
namespace {

constexpr int booking_width = 640;

}  // namespace

BookingDialog::BookingDialog(wxWindow* parent, const desk::BookingForm& form, std::string patient,
                             desk::ClinicFile file)
    : AskingForm{parent, said("Book parts for a visit"), form.intro},
      patient_{std::move(patient)},
      file_{std::move(file)},
      following_{[this] {
                   return [file = file_, patient = patient_, asked = answers()] {
                     return desk::booking_check_words(file, patient, asked);
                   };
                 },
                 [this](const std::string& words) { checks_->ChangeValue(to_wx(words)); }} {
  make_fields(form);
  keep_draft({item_, side_, pieces_, day_, place_, by_, because_}, file_.path,
             fmt::format("booking for {}", patient_));
  finish_asking(
      said("B&ook"), [this] { return attempt(); }, booking_width);
  following_.follow({item_, pieces_, day_, side_});
  item_->SetFocus();
}

void BookingDialog::make_fields(const desk::BookingForm& form) {
  item_ = add_combo(said("I&tem"), form.items, "",
                    said("The item's code; those that the patient has in use stand first"));
  side_ = add_closed(said("&Side"), form.sides, 0,
                     said("As recorded: where the patient has it in use, or wears a prosthesis"));
  pieces_ = add_text(said("&Pieces"), "1", said("How many will be needed"));
  day_ = add_text(said("&Day"), form.day, said("The day of the visit, such as 2026-11-25"));
  place_ = add_choice(said("P&lace"), form.places, 0, said("Where they will be handed over"));
  checks_ = new wxTextCtrl{this,
                           wxID_ANY,
                           "",
                           wxDefaultPosition,
                           wxSize(FromDIP(booking_width), 8 * GetCharHeight()),
                           wxTE_MULTILINE | wxTE_READONLY | wxTE_BESTWRAP};
  set_accessible_name(*checks_, said("What the checks say"));
  add_wide(checks_, 1);
  by_ = add_text(said("D&ecided by"), "",
                 said("Only where a check stops it: the clinician who decides to book it"));
  because_ = add_text(said("Beca&use"), "", said("The clinician's reason; it is recorded"));
}

desk::BookingAnswers BookingDialog::answers() const {
  return {from_wx(item_->GetValue()),   value_of(*side_),  from_wx(pieces_->GetValue()),
          from_wx(day_->GetValue()),    value_of(*place_), from_wx(by_->GetValue()),
          from_wx(because_->GetValue())};
}

std::string BookingDialog::attempt() {
  following_.leave();
  auto booked = aside([file = file_, patient = patient_, asked = answers()] {
    return desk::book_for_visit(file, patient, asked);
  });
  if (!booked.checks.empty()) checks_->ChangeValue(to_wx(booked.checks));
  news_ = std::move(booked.said);
  return booked.refusal;
}

}  // namespace sparewell::desktop
