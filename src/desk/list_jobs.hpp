/// The work behind the window's lists, counts and price lists. Each opens a Store of its own, so
/// that it can run on any thread, and throws what the store or the file system throws.
#pragma once

#include <filesystem>
#include <string>

#include "desk/clinic_jobs.hpp"
#include "desk/counting/count_entry.hpp"
#include "desk/prices/price_update.hpp"
#include "desk/recall_words.hpp"

namespace sparewell::desk {

void write_stock_list(const Day& day, const std::filesystem::path& file);
/// False, and nothing is written, when it was asked to stop.
[[nodiscard]] bool write_month_forecast(const Day& day, int months,
                                        const std::filesystem::path& file,
                                        const JobControl& control);

struct CountSheetWish {
  std::string place;  ///< "" for all
  int most = 0;       ///< items at a place; 0 for all
  bool blind = false;
};
/// Returns how many lots are on the sheet.
std::size_t write_count_sheet(const ClinicFile& file, const CountSheetWish& wish,
                              const std::filesystem::path& out);
/// Refuses a file that is no count sheet.
[[nodiscard]] Expected<CountSheet> open_count_sheet(const std::filesystem::path& sheet);
[[nodiscard]] CountReview look_at_count(const ClinicFile& file, const CountSheet& sheet);
[[nodiscard]] CountReview book_counted(const ClinicFile& file, const CountSheet& sheet,
                                       const CountBooking& booking);

[[nodiscard]] Expected<PriceListOutcome> take_price_list(const ClinicFile& file,
                                                         const PriceListRequest& request,
                                                         PriceAcceptance acceptance);

[[nodiscard]] Expected<RecallNotice> look_up_recall(const ClinicFile& file, const ItemCode& item,
                                                    const std::string& lot);
/// Moves the recalled stock to quarantine; returns it as it lay before.
std::vector<StockLevel> quarantine(const ClinicFile& file, const ItemCode& item,
                                   const std::string& lot);
void write_recall_list(const ClinicFile& file, const RecallNotice& notice, Names names,
                       const std::filesystem::path& out);

}  // namespace sparewell::desk
