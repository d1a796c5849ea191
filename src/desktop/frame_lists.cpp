// The window's lists, counts, price lists and recalls.
#include <algorithm>

#include <wx/filedlg.h>
#include <wx/msgdlg.h>
#include <wx/utils.h>

#include "clinic/say.hpp"
#include "desk/counting/count_plan.hpp"
#include "desk/counting/count_words.hpp"
#include "desk/list_jobs.hpp"
#include "desk/prices/price_words.hpp"
#include "desk/wording.hpp"
#include "desktop/dialogs/count_dialogs.hpp"
#include "desktop/dialogs/months_dialog.hpp"
#include "desktop/dialogs/price_dialogs.hpp"
#include "desktop/dialogs/recall_dialog.hpp"
#include "desktop/dialogs/save_workbook.hpp"
#include "desktop/main_frame.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/note_bar.hpp"

namespace sparewell::desktop {
namespace {

using desk::JobControl;
using desk::JobEnd;

constexpr auto sheet_kinds = to_say("Workbooks and CSV (*.xlsx;*.csv)|*.xlsx;*.csv|All files|*");

std::string choose_sheet(wxWindow* parent, const wxString& title) {
  wxFileDialog dialog{parent, title, "", "", said(sheet_kinds), wxFD_OPEN | wxFD_FILE_MUST_EXIST};
  return dialog.ShowModal() == wxID_OK ? from_wx(dialog.GetPath()) : std::string{};
}

}  // namespace

void MainFrame::say_workbook(const std::string& file) {
  note_->say(say("Written to {}.", file),
             {{said("Open &workbook"), [file] { wxLaunchDefaultApplication(to_wx(file)); }}});
}

void MainFrame::write_list(const std::string& what, const std::string& file,
                           std::function<void()> write) {
  start_job({what, false, [write = std::move(write)](const JobControl&) { write(); },
             [this, file](const JobEnd& end) {
               if (!say_failure(end)) say_workbook(file);
             }});
}

void MainFrame::write_stock_list() {
  const auto file =
      ask_for_workbook(this, said("Write stock list"), say("stock {}", iso_text(file_.today)));
  if (file.empty()) return;
  write_list(said("Writing the stock list"), file,
             [day = day_, file] { desk::write_stock_list(*day, file); });
}

void MainFrame::forecast_months() {
  MonthsDialog dialog{this};
  if (dialog.ShowModal() != wxID_OK) return;
  const auto file =
      ask_for_workbook(this, said("Forecast by month"), say("forecast {}", iso_text(file_.today)));
  if (file.empty()) return;
  auto written = std::make_shared<bool>(false);
  start_job({said("Working out the need month by month"), true,
             [day = day_, file, months = dialog.months(), written](const JobControl& control) {
               *written = desk::write_month_forecast(*day, months, file, control);
             },
             [this, file, written](const JobEnd& end) {
               if (!say_failure(end) && *written) say_workbook(file);
             }});
}

void MainFrame::write_count_sheet() {
  CountSheetDialog dialog{this, desk::places_with_stock(day_->clinic())};
  if (dialog.ShowModal() != wxID_OK) return;
  const auto wish = dialog.wish();
  const auto name = say("count {} {}", wish.place, iso_text(file_.today));
  const auto out = ask_for_workbook(this, said("Write count sheet"), name);
  if (out.empty()) return;
  write_list(said("Writing the count sheet"), out,
             [file = file_, wish, out] { desk::write_count_sheet(file, wish, out); });
}

void MainFrame::enter_count() {
  const auto path = choose_sheet(this, said("Enter a count"));
  if (path.empty()) return;
  using Read = std::pair<Expected<desk::CountSheet>, desk::CountReview>;
  auto read = std::make_shared<Read>();
  start_job({said("Reading the count"), false,
             [file = file_, path, read](const JobControl&) {
               read->first = desk::open_count_sheet(path);
               if (read->first) read->second = desk::look_at_count(file, *read->first);
             },
             [this, read](const JobEnd& end) {
               if (say_failure(end)) return;
               if (!read->first) {
                 wxMessageBox(to_wx(read->first.error().sentence), said("Enter a count"),
                              wxOK | wxICON_WARNING, this);
                 return;
               }
               CountReviewDialog dialog{this, read->second, file_.who};
               if (dialog.ShowModal() == wxID_OK) book_count(*read->first, dialog.booking());
             }});
}

void MainFrame::book_count(const desk::CountSheet& sheet, const desk::CountBooking& booking) {
  auto review = std::make_shared<desk::CountReview>();
  start_job({said("Booking the count"), false,
             [file = file_, sheet, booking, review](const JobControl&) {
               *review = desk::book_counted(file, sheet, booking);
             },
             [this, review](const JobEnd& end) {
               if (say_failure(end)) return;
               note_->say(say_n("{} {} count is booked.", "{} {} counts are booked.",
                                static_cast<unsigned long>(review->booked()),
                                desk::count_summary(*review), desk::number_words(review->booked())),
                          {});
               read_again();
             }});
}

void MainFrame::take_price_list() {
  std::vector<std::string> suppliers;
  for (const auto& supplier : day_->clinic().suppliers) suppliers.push_back(supplier.name.text);
  if (suppliers.empty()) {
    wxMessageBox(said("The clinic file has no suppliers yet; import them first."),
                 said("Supplier price list"), wxOK | wxICON_INFORMATION, this);
    return;
  }
  const auto path = choose_sheet(this, said("Supplier price list"));
  if (path.empty()) return;
  PriceListDialog dialog{this, path, std::move(suppliers)};
  if (dialog.ShowModal() == wxID_OK) {
    read_prices(dialog.request(), desk::PriceAcceptance::nothing);
  }
}

void MainFrame::read_prices(const desk::PriceListRequest& request,
                            desk::PriceAcceptance acceptance) {
  auto outcome = std::make_shared<Expected<desk::PriceListOutcome>>();
  start_job({said("Comparing the price list"), false,
             [file = file_, request, acceptance, outcome](const JobControl&) {
               *outcome = desk::take_price_list(file, request, acceptance);
             },
             [this, request, acceptance, outcome](const JobEnd& end) {
               if (!say_failure(end)) show_prices(request, acceptance, *outcome);
             }});
}

void MainFrame::show_prices(const desk::PriceListRequest& request, desk::PriceAcceptance acceptance,
                            const Expected<desk::PriceListOutcome>& outcome) {
  if (!outcome) {
    wxMessageBox(to_wx(outcome.error().sentence), said("Supplier price list"),
                 wxOK | wxICON_WARNING, this);
    return;
  }
  if (acceptance != desk::PriceAcceptance::nothing) {
    note_->say(desk::price_summary(*outcome), {});
    read_again();
    return;
  }
  PriceReviewDialog dialog{this, *outcome};
  if (dialog.ShowModal() == wxID_OK) read_prices(request, dialog.acceptance());
}

void MainFrame::look_up_recall() {
  RecallDialog dialog{this, file_, day_->clinic().items};
  dialog.ShowModal();
  if (dialog.moved_stock()) read_again();
}

}  // namespace sparewell::desktop
