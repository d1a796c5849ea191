/// The work behind the window's commands. Each opens a Store of its own, so that it can run on any
/// thread, and throws what the store or the file system throws.
#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/forecast_test.hpp"
#include "desk/import_folder.hpp"
#include "desk/job.hpp"
#include "desk/write_orders.hpp"
#include "store/open.hpp"

namespace sparewell::desk {

/// Which clinic file, on which day, and who works with it.
struct ClinicFile {
  std::string path;
  Date today;
  std::string who;                   ///< the account's name, for the change log
  std::optional<Money> budget = {};  ///< for today's orders
};

/// The store of the file, with the clock of this machine. By default one that was opened before:
/// the file is looked through for damage whenever all of it is read, see read_records.
[[nodiscard]] std::unique_ptr<store::Store> open_store(
    const ClinicFile& file, store::OpenMode mode = store::OpenMode::again);

/// Makes an empty clinic file. Throws std::runtime_error when there is a file already.
void make_clinic_file(const ClinicFile& file);

/// What is read of a clinic file before anything is worked out.
struct ClinicRecords {
  Clinic clinic;
  std::vector<StockMovement> movements;  ///< that the plan of moves between branches rests on
};
[[nodiscard]] ClinicRecords read_records(const ClinicFile& file, const JobControl& control);
/// nullptr when it was stopped.
[[nodiscard]] DayPtr work_out(ClinicRecords records, const ClinicFile& file,
                              const JobControl& control);
/// Both of them; nullptr when it was stopped.
[[nodiscard]] DayPtr read_day(const ClinicFile& file, const JobControl& control);
/// Tests the forecasts on the history of the day's clinic; nullptr when it was stopped.
[[nodiscard]] ForecastTestPtr test_forecasts(const Day& day, const JobControl& control);
[[nodiscard]] ImportReport bring_in_folder(const ClinicFile& file,
                                           const std::filesystem::path& folder,
                                           const exchange::FolderFormat& format,
                                           const JobControl& control);
[[nodiscard]] std::vector<WrittenOrder> write_workbooks(const ClinicFile& file, const Day& day,
                                                        const std::filesystem::path& folder);
[[nodiscard]] SentOrders mark_sent(const ClinicFile& file, const std::vector<std::string>& numbers);
void save_settings(const ClinicFile& file, const ClinicSettings& settings);

}  // namespace sparewell::desk
