#include "desk/list_jobs.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/counting/count_plan.hpp"
#include "desk/papers/month_forecast.hpp"
#include "desk/papers/recall_list.hpp"
#include "desk/papers/stock_list.hpp"

namespace sparewell::desk {

void write_stock_list(const Day& day, const std::filesystem::path& file) {
  exchange::write_list_workbook(stock_list(day.clinic(), day.today()), file);
}

bool write_month_forecast(const Day& day, int months, const std::filesystem::path& file,
                          const JobControl& control) {
  const auto forecast = forecast_by_month(day.assessment(), months, [&](double done) {
    control.say({say("Working out the need month by month"), done});
    return !control.stop.stop_requested();
  });
  if (control.stop.stop_requested()) return false;
  exchange::write_list_workbook(month_forecast_list(forecast, day.clinic()), file);
  return true;
}

std::size_t write_count_sheet(const ClinicFile& file, const CountSheetWish& wish,
                              const std::filesystem::path& out) {
  const auto plan = read_count_plan(*open_store(file)->read(), file.today, wish.place, wish.most);
  if (!plan) throw std::runtime_error{plan.error().sentence};
  const auto list = count_sheet(plan->candidates, plan->clinic, file.today, wish.blind);
  exchange::write_list_workbook(list, out);
  return list.sheets.front().rows.size();
}

Expected<CountSheet> open_count_sheet(const std::filesystem::path& sheet) {
  const auto table = exchange::read_sheet(sheet);
  if (!table) return tl::unexpected(table.error());
  return read_count_sheet(*table);
}

CountReview look_at_count(const ClinicFile& file, const CountSheet& sheet) {
  return review_count(*open_store(file)->read(), sheet);
}

CountReview book_counted(const ClinicFile& file, const CountSheet& sheet,
                         const CountBooking& booking) {
  return book_count(*open_store(file), sheet, booking, file.today,
                    {file.who, to_say("a count of the shelf")});
}

Expected<PriceListOutcome> take_price_list(const ClinicFile& file, const PriceListRequest& request,
                                           PriceAcceptance acceptance) {
  return update_prices(*open_store(file), request, acceptance, file.who);
}

Expected<RecallNotice> look_up_recall(const ClinicFile& file, const ItemCode& item,
                                      const std::string& lot) {
  return look_up_recall(*open_store(file)->read(), item, lot, file.today);
}

std::vector<StockLevel> quarantine(const ClinicFile& file, const ItemCode& item,
                                   const std::string& lot) {
  const auto why = lot.empty() ? fmt::format("recall of {}", item.text)
                               : fmt::format("recall of {}, lot {}", item.text, lot);
  return quarantine_recalled(*open_store(file), item, lot, file.today, {file.who, why});
}

void write_recall_list(const ClinicFile& file, const RecallNotice& notice, Names names,
                       const std::filesystem::path& out) {
  const auto name = open_store(file)->read()->settings().name;
  exchange::write_list_workbook(recall_list(notice, names, name), out);
}

}  // namespace sparewell::desk
