#include "desktop/dialogs/count_dialogs.hpp"

#include <array>

#include <wx/choice.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desk/counting/count_words.hpp"
#include "desktop/dialogs/row_detail.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

constexpr std::array<int, 5> amounts{10, 20, 50, 100, 0};

}  // namespace

CountSheetDialog::CountSheetDialog(wxWindow* parent, std::vector<std::string> places)
    : Form{parent, said("Write a count sheet"),
           said("The sheet lists what to count first: what is worth most, was often wrong, and has "
                "not been counted for long. Fill it in at the shelf and bring it back with Enter a "
                "count.")},
      places_{std::move(places)} {
  std::vector<std::string> shown{said("all places")};
  shown.insert(shown.end(), places_.begin(), places_.end());
  place_ = add_choice(said("&Place"), shown, 0, said("Where to count"));
  most_ = add_choice(
      said("&How many"),
      {said("10 items"), said("20 items"), said("50 items"), said("100 items"), said("all")}, 1,
      said("At most so many items, with all their lots"));
  blind_ = add_choice(said("&Records"),
                      {said("show what the records say"), said("hide what the records say")}, 0,
                      said("Whoever counts without seeing the records counts more carefully"));
  finish(said("&Write..."));
}

desk::CountSheetWish CountSheetDialog::wish() const {
  const int place = place_->GetSelection();
  return {place > 0 ? places_.at(static_cast<std::size_t>(place - 1)) : std::string{},
          amounts.at(static_cast<std::size_t>(most_->GetSelection())), blind_->GetSelection() == 1};
}

CountReviewDialog::CountReviewDialog(wxWindow* parent, const desk::CountReview& review,
                                     const std::string& who)
    : Form{parent, said("Enter a count"), desk::count_summary(review)},
      table_{desk::count_table(review)} {
  const bool anything = !review.findings.empty();
  if (anything) {
    by_ =
        add_text(said("Counted &by"), who, said("Who counted; it stands beside every correction"));
  }
  if (review.moved() > 0) {
    moved_ = add_choice(said("Lots that &moved"),
                        {said("leave them: they are counted again"),
                         said("book them: they were counted after they moved")},
                        0, said("Lots whose stock has changed since the sheet was written"));
  }
  add_wide(make_row_detail(this, table_, said("What was counted"),
                           said("No row of the sheet has a count.")),
           1);
  anything ? finish(said("Boo&k")) : finish(said("&Close"), false);
}

desk::CountBooking CountReviewDialog::booking() const {
  return {by_ ? from_wx(by_->GetValue()) : std::string{}, moved_ && moved_->GetSelection() == 1};
}

}  // namespace sparewell::desktop
