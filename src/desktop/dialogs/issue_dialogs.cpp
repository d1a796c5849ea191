#include "desktop/dialogs/issue_dialogs.hpp"

#include <charconv>

#include <fmt/format.h>
#include <wx/checkbox.h>
#include <wx/choice.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desk/issue_words.hpp"
#include "desk/patient_card.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"

namespace sparewell::desktop {
namespace {

std::string text_of(const wxTextCtrl* field) {
  return from_wx(field->GetValue());
}

}  // namespace

IssueDialog::IssueDialog(wxWindow* parent, std::string patient, const std::string& words,
                         const std::filesystem::path& clinic_file, Check check, Issue issue)
    : AskingForm{parent, said("Issue a part"), say("To {}. {}", words, desk::care_caution())},
      patient_{std::move(patient)},
      check_{std::move(check)},
      issue_{std::move(issue)},
      following_{[this] { return checking(); },
                 [this](const std::string& told) { checks_->ChangeValue(to_wx(told)); }} {
  make_fields();
  keep_draft({scan_, side_, item_, quantity_, lot_, serial_, by_, because_}, clinic_file,
             fmt::format("issue to {}", patient_));
  finish_asking(
      said("&Issue"), [this] { return attempt(); }, 640);
  following_.follow({scan_, item_, quantity_, lot_, serial_, side_});
  scan_->SetFocus();
}

void IssueDialog::make_fields() {
  scan_ = add_text(said("S&can"), "",
                   said("GS1 or HIBC label as scanned or typed; gives item, lot and serial"));
  side_ = add_choice(said("&Side"), {shown_word(Side::left), shown_word(Side::right)}, 0,
                     said("The side that it is worn on"));
  item_ = add_text(said("I&tem"), "", said("The item's code, where nothing is scanned"));
  quantity_ = add_text(said("&Pieces"), "1", said("How many are handed over"));
  lot_ = add_text(said("&Lot"), "", said("Empty: the lot that must be used first"));
  serial_ = add_text(said("Serial &number"), "", said("Where the part has one"));
  checks_ = new wxTextCtrl{this,
                           wxID_ANY,
                           "",
                           wxDefaultPosition,
                           wxSize(FromDIP(640), 8 * GetCharHeight()),
                           wxTE_MULTILINE | wxTE_READONLY | wxTE_BESTWRAP};
  set_accessible_name(*checks_, said("What the checks say"));
  add_wide(checks_, 1);
  by_ = add_text(said("&Decided by"), "",
                 said("Only where a check stops it: the clinician who decides to hand it over"));
  because_ = add_text(said("&Because"), "", said("The clinician's reason; it is recorded"));
}

desk::IssueRequest IssueDialog::request() const {
  desk::IssueRequest made;
  made.patient = patient_;
  made.side = side_->GetSelection() == 1 ? Side::right : Side::left;
  made.item = text_of(item_);
  const std::string pieces = text_of(quantity_);
  made.quantity = 0;  // refused where it is no number
  std::from_chars(pieces.data(), pieces.data() + pieces.size(), made.quantity);
  made.lot = text_of(lot_);
  made.serial = text_of(serial_);
  if (const auto scan = text_of(scan_); !scan.empty()) made.scans = {scan};
  made.override_by = text_of(by_);
  made.override_because = text_of(because_);
  return made;
}

FollowingAnswer::Work IssueDialog::checking() const {
  return [check = check_, asked = request()] {
    if (asked.item.empty() && asked.scans.empty()) return std::string{};
    const auto made = check(asked);
    return made ? desk::issue_text(*made) : made.error().sentence;
  };
}

std::string IssueDialog::attempt() {
  following_.leave();
  const auto outcome = issue_(request());
  if (!outcome) return outcome.error().sentence;
  checks_->ChangeValue(to_wx(desk::issue_text(outcome->check)));
  if (!outcome->recorded) {
    return outcome->check.cannot_be_done() ? said("Nothing was recorded: see what the checks say.")
                                           : said(
                                                 "A check stops it. A clinician may decide "
                                                 "otherwise: fill in name and reason.");
  }
  units_ = outcome->units;
  return "";
}

EndPartDialog::EndPartDialog(wxWindow* parent, const desk::UnitChoice& unit,
                             const std::string& words, Date today,
                             const std::filesystem::path& clinic_file, End end)
    : AskingForm{parent, said("End a part"),
                 say("{}. The reason tells how long such parts last.", words)} {
  std::vector<std::string> names;
  for (const auto word : sparewell::words<EndReason>()) {
    reasons_.push_back(*parse_word<EndReason>(word));
    names.push_back(shown_word(reasons_.back()));
  }
  reason_ =
      add_choice(said("&Reason"), names, 0, said("Hole to worn are wear; the others are not"));
  on_ =
      add_text(said("&On"), iso_text(today), said("The day such as 2026-11-25 on which it ended"));
  const auto add_check = [&](const char* label, const std::string& help) {
    auto* box = new wxCheckBox{this, wxID_ANY, label};
    box->SetToolTip(to_wx(help));
    add_wide(box, 0);
    return box;
  };
  back_ = add_check(said("It is &back in the clinic"), desk::hygiene_words());
  unopened_ = add_check(said("It is &unopened, in its sealed package"), desk::hygiene_words());
  mistake_ = add_check(said("It was issued by &mistake"),
                       said("The booking is reversed; reason and day are then not used"));
  keep_draft({reason_, on_, back_, unopened_, mistake_}, clinic_file,
             fmt::format("end of {} {} {} {}", unit.patient, unit.item, unit.lot, unit.serial));
  finish_asking(
      said("&End it"), [this, unit, end = std::move(end)] { return attempt(unit, end); }, 520);
}

std::string EndPartDialog::attempt(const desk::UnitChoice& unit, const End& end) const {
  const auto day = parse_iso_date(text_of(on_));
  if (!day && !mistake_->GetValue()) return said("Write the day as 2026-11-25.");
  desk::UnitEnding ending;
  ending.unit = unit;
  ending.reason = reasons_[static_cast<std::size_t>(reason_->GetSelection())];
  ending.on = day.value_or(Date{});
  ending.back_to_shelf = back_->GetValue();
  ending.unopened = unopened_->GetValue();
  ending.mistake = mistake_->GetValue();
  return end(ending);
}

}  // namespace sparewell::desktop
