#include "desktop/dialogs/price_dialogs.hpp"

#include <algorithm>
#include <array>
#include <filesystem>

#include <wx/choice.h>
#include <wx/msgdlg.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desk/prices/price_words.hpp"
#include "desktop/dialogs/row_detail.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

constexpr std::array<char, 3> separators{',', ';', '\t'};
constexpr std::array<char, 2> decimal_signs{'.', ','};

}  // namespace

PriceListDialog::PriceListDialog(wxWindow* parent, const std::string& file,
                                 std::vector<std::string> suppliers)
    : Form{parent, said("Supplier price list"),
           say("Shows what {} would change in the catalogue. Nothing is written before you accept "
               "it.",
               std::filesystem::path{file}.filename().string())},
      suppliers_{std::move(suppliers)} {
  request_.file = file;
  supplier_ = add_choice(said("&Supplier"), suppliers_, 0, said("Whose list it is"));
  sheet_ = add_text(said("Sh&eet"), "", said("Name of the workbook's sheet; empty for the first"));
  headings_ = add_text(said("Other &headings"), "",
                       said("For columns that are named unusually, such as unit_cost=Preis; "
                            "supplier_item=Artikel, separated by semicolons"));
  separator_ = add_choice(said("Separa&tor"), {said("comma  ,"), said("semicolon  ;"), said("tab")},
                          0, said("What stands between the columns of CSV text"));
  decimal_ = add_choice(said("&Decimal sign"), {said("point  ."), said("comma  ,")}, 0,
                        said("What stands before the decimals of a number written as text"));
  descriptions_ = add_choice(said("Descri&ptions"),
                             {said("keep those of the clinic"), said("take those of the list")}, 0,
                             said("Whose words for an item the catalogue has"));
  finish(said("Sho&w"));
  Bind(wxEVT_BUTTON, &PriceListDialog::on_ok, this, wxID_OK);
}

void PriceListDialog::on_ok(wxCommandEvent& event) {
  request_.supplier.text = suppliers_.at(static_cast<std::size_t>(supplier_->GetSelection()));
  request_.sheet = from_wx(sheet_->GetValue());
  request_.format.separator = separators.at(static_cast<std::size_t>(separator_->GetSelection()));
  request_.format.decimal_sign =
      decimal_signs.at(static_cast<std::size_t>(decimal_->GetSelection()));
  request_.take_descriptions = descriptions_->GetSelection() == 1;
  auto columns = desk::read_headings(from_wx(headings_->GetValue()));
  if (!columns) {
    wxMessageBox(to_wx(columns.error().sentence), said("Other headings"), wxOK | wxICON_WARNING,
                 this);
    headings_->SetFocus();
    return;
  }
  request_.columns = std::move(*columns);
  event.Skip();
}

PriceReviewDialog::PriceReviewDialog(wxWindow* parent, const desk::PriceListOutcome& outcome)
    : Form{parent, said("Supplier price list"), desk::price_summary(outcome)},
      table_{desk::price_table(outcome)} {
  const auto& changes = outcome.found.changes;
  const bool anything = std::ranges::any_of(changes, &supply::PriceChange::changes_item);
  const bool doubtful = std::ranges::any_of(
      changes, [](const supply::PriceChange& change) { return !change.doubts.empty(); });
  if (doubtful) {
    doubtful_ =
        add_choice(said("&Doubtful prices"),
                   {said("leave as they are"), said("write them too: I have looked at each")}, 0,
                   said("What to do with the prices that are marked doubtful"));
  }
  add_wide(make_row_detail(this, table_, said("What the price list changes"),
                           said("The list says what the catalogue says already.")),
           1);
  anything ? finish(said("&Accept")) : finish(said("&Close"), false);
}

desk::PriceAcceptance PriceReviewDialog::acceptance() const {
  return doubtful_ && doubtful_->GetSelection() == 1 ? desk::PriceAcceptance::doubtful_too
                                                     : desk::PriceAcceptance::sure;
}

}  // namespace sparewell::desktop
