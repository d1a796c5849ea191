#include "desk/import_trial.hpp"

#include <filesystem>

#include "clinic/say.hpp"
#include "desk/report_words.hpp"
#include "store/trial.hpp"

namespace sparewell::desk {
namespace {

store::Clock clock_of_today() {
  return [] { return std::chrono::system_clock::now(); };
}

std::unique_ptr<store::Store> trial_store(const ClinicFile& file) {
  if (!std::filesystem::exists(file.path)) return store::open_in_memory(clock_of_today());
  return store::copy_in_memory(file.path, clock_of_today());
}

}  // namespace

std::vector<std::string> missing_records(const Clinic& clinic) {
  std::vector<std::string> missing;
  const auto tell = [&](bool none, const char* sentence) {
    if (none) missing.emplace_back(said(sentence));
  };
  tell(clinic.items.empty(),
       to_say("No items (catalogue.csv): nothing can be ordered or handed out."));
  tell(clinic.patients.empty(), to_say("No patients (patients.csv)."));
  tell(clinic.prostheses.empty(),
       to_say("No prostheses (prostheses.csv): suspension chains are not checked."));
  tell(clinic.units.empty(),
       to_say("No parts handed out (issued.csv): nothing is foreseen to wear out."));
  tell(clinic.usage.empty(),
       to_say("No usage (usage.csv): forecasts take everyone for an average user."));
  tell(clinic.sensitivities.empty(),
       to_say("No sensitivities (sensitivities.csv): none is checked for. That none is recorded "
              "does not mean that there is none."));
  tell(clinic.measurements.empty(),
       to_say("No measurements (measurements.csv): sizes are not checked."));
  tell(
      clinic.shelf.empty(),
      to_say("No stock (stock.csv): every item counts as out of stock, and orders are too large."));
  tell(clinic.order_lines.empty(),
       to_say("No orders (orders.csv): lead times are those that suppliers quote."));
  tell(clinic.claim_lines.empty(),
       to_say("No claims (claims.csv): everything handed out counts as not billed."));
  tell(clinic.invoice_lines.empty(),
       to_say("No invoices (invoices.csv): deliveries count as not invoiced."));
  return missing;
}

ImportTrial try_folder(const ClinicFile& file, const std::filesystem::path& folder,
                       const exchange::FolderFormat& format, const JobControl& control) {
  ImportOptions options;
  options.format = format;
  options.today = file.today;
  options.stop = control.stop;
  options.progress = [&](const ImportProgress& progress) {
    control.say({say("Trying {}", progress.file), progress.done});
  };
  const auto store = trial_store(file);
  ImportTrial trial;
  trial.report = import_without_rejects(*store, folder, {file.who, "trial"}, options);
  trial.missing = missing_records(store::load_clinic(*store->read()));
  return trial;
}

std::string trial_summary(const ImportTrial& trial) {
  auto text = say("Nothing has been imported yet. If this folder were imported: {}",
                  import_summary(trial.report));
  if (trial.missing.empty()) return text;
  text += say("\n\nAfter that the clinic file would still lack:");
  for (const auto& sentence : trial.missing) text += "\n- " + sentence;
  return text;
}

}  // namespace sparewell::desk
