#include "desk/clinic_jobs.hpp"

#include "clinic/say.hpp"
#include "desk/assessment_stages.hpp"

namespace sparewell::desk {

std::unique_ptr<store::Store> open_store(const ClinicFile& file, store::OpenMode mode) {
  return store::open_clinic_file(file.path, mode, [] { return std::chrono::system_clock::now(); });
}

void make_clinic_file(const ClinicFile& file) {
  if (std::filesystem::exists(file.path)) {
    throw std::runtime_error{
        say("There is a file named {} already. Choose another name, or open it.", file.path)};
  }
  (void)open_store(file, store::OpenMode::create);
}

namespace {

/// Where the stages of opening begin, as parts of the whole: estimates.
constexpr double wear_begins = 0.1;
constexpr double orders_begin = 0.55;
constexpr double surprises_begin = 0.9;

}  // namespace

ClinicRecords read_records(const ClinicFile& file, const JobControl& control) {
  control.say({say("Reading the clinic file"), 0.0});
  const auto store = open_store(file, store::OpenMode::existing);
  const auto snapshot = store->read();
  ClinicRecords records;
  records.clinic = store::load_clinic(*snapshot);
  records.movements = ledger_for_restock(*snapshot, records.clinic);
  return records;
}

DayPtr work_out(ClinicRecords records, const ClinicFile& file, const JobControl& control) {
  auto& [clinic, ledger] = records;
  auto policy = supply::policy_of(clinic.settings);
  policy.budget = file.budget;
  const auto goes_on = [&](AssessmentStage stage) {
    const bool wear = stage == AssessmentStage::wear;
    control.say(
        {wear ? say("Working out how long parts will last") : say("Working out what to order"),
         wear ? wear_begins : orders_begin});
    return !control.stop.stop_requested();
  };
  auto assessment =
      assess_in_stages(std::move(clinic), built_in_priors(), file.today, policy, goes_on);
  if (!assessment) return nullptr;
  control.say({say("Looking for what stands out"), surprises_begin});
  auto surprises = wear::find_surprises(assessment->clinic, assessment->fitted, file.today);
  auto restock = plan_restock(*assessment, ledger);
  if (control.stop.stop_requested()) return nullptr;
  return std::make_shared<const Day>(*std::move(assessment), std::move(surprises),
                                     std::move(restock));
}

DayPtr read_day(const ClinicFile& file, const JobControl& control) {
  return work_out(read_records(file, control), file, control);
}

ForecastTestPtr test_forecasts(const Day& day, const JobControl& control) {
  bool stopped = false;
  const auto goes_on = [&](int done, int of) {
    control.say({said("Testing the forecasts on the clinic's history"),
                 static_cast<double>(done) / static_cast<double>(of)});
    stopped = control.stop.stop_requested();
    return !stopped;
  };
  auto test = wear::run_backtest(day.clinic(), built_in_priors(), day.today(), {}, goes_on);
  return stopped ? nullptr : std::make_shared<const ForecastTest>(std::move(test));
}

ImportReport bring_in_folder(const ClinicFile& file, const std::filesystem::path& folder,
                             const exchange::FolderFormat& format, const JobControl& control) {
  ImportOptions options;
  options.format = format;
  options.today = file.today;
  options.stop = control.stop;
  options.progress = [&](const ImportProgress& progress) {
    control.say({say("Importing {}", progress.file), progress.done});
  };
  const auto store = open_store(file);
  return import_folder(*store, folder, {file.who, to_say("import of a folder")}, options);
}

std::vector<WrittenOrder> write_workbooks(const ClinicFile& file, const Day& day,
                                          const std::filesystem::path& folder) {
  const auto store = open_store(file);
  return write_orders(*store, day.assessment(), folder,
                      {file.who, to_say("order workbooks written")});
}

SentOrders mark_sent(const ClinicFile& file, const std::vector<std::string>& numbers) {
  const auto store = open_store(file);
  return mark_as_sent(*store, numbers, file.today,
                      {file.who, to_say("orders sent to their suppliers")});
}

void save_settings(const ClinicFile& file, const ClinicSettings& settings) {
  const auto store = open_store(file);
  const auto work = store->begin_write({file.who, to_say("clinic details changed")});
  work->save(settings);
  work->commit();
}

}  // namespace sparewell::desk
