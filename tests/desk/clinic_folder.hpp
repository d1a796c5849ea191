/// A folder of clinic files in a temporary place, and what an import makes of it.
#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <string>

#include <stdlib.h>

#include "desk/import_folder.hpp"
#include "store/open.hpp"

namespace sparewell::test {

/// Removed with everything in it at the end.
class ClinicFolder {
 public:
  ClinicFolder() {
    std::string pattern = (std::filesystem::temp_directory_path() / "clinic-XXXXXX").string();
    path_ = ::mkdtemp(pattern.data());
  }
  ~ClinicFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  ClinicFolder(const ClinicFolder&) = delete;
  ClinicFolder& operator=(const ClinicFolder&) = delete;

  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  void write(const std::string& name, const std::string& text) const {
    std::ofstream{path_ / name, std::ios::binary} << text;
  }

 private:
  std::filesystem::path path_;
};

inline std::string text_of(const std::filesystem::path& path) {
  std::ifstream in{path, std::ios::binary};
  return {std::istreambuf_iterator<char>{in}, std::istreambuf_iterator<char>{}};
}

inline std::string replaced(std::string text, const std::string& from, const std::string& to) {
  for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size()) {
    text.replace(at, from.size(), to);
  }
  return text;
}

/// A clinic with every file, each with rows that refer to others.
inline const std::map<std::string, std::string>& full_folder() {
  static const std::map<std::string, std::string> files{
      {"suppliers.csv",
       "supplier,order_days,freight,free_freight_from,currency,email,account\n"
       "Nordpol Teile,Mon;Thu,12.50,500,EUR,orders@nordpol.example,K-17\n"
       "Sudpol Parts,,,,USD,,\n"},
      {"catalogue.csv",
       "item_code,description,kind,attachment,material,size_min_cm,size_max_cm,constituents,"
       "supplier,unit_cost,currency,pack_size,price_breaks,stocked\n"
       "LN-1,\"Liner, locking\",liner,locking,silicone,27.5,29.5,silicone;dye,Nordpol "
       "Teile,100,EUR,"
       "1,5:95,yes\n"
       "SK-1,Sock,sock,none,fabric,,,,Sudpol Parts,4.50,,6,,yes\n"
       "PN-1,Pin,pin,none,metal,,,,,,,,,no\n"},
      {"patients.csv",
       "patient_ref,given_name,family_name,birth_date,next_visit\n"
       "P1,Ada,Muster,1950-02-03,2026-12-01\nP2,,,,\n"},
      {"prostheses.csv",
       "patient_ref,side,level,suspension,stage,delivered_on,ended_on\n"
       "P1,left,transtibial,pin,definitive,2024-01-10,\n"
       "P2,right,transfemoral,suction,preparatory,2025-01-10,2025-06-10\n"},
      {"usage.csv",
       "patient_ref,from_date,activity,kneeling_hours,wear_hours,sweating,impact_sport\n"
       "P1,2024-01-10,K3,1.5,14,normal,no\nP1,2025-05-01,,3,,,\n"},
      {"sensitivities.csv",
       "patient_ref,substance,reaction,established_by,noted_on\n"
       "P1,thiurams,rash,patch test,2023-05-05\nP1,nickel,,,\n"},
      {"measurements.csv",
       "patient_ref,side,measured_on,at_cm,circumference_cm\n"
       "P1,left,2025-01-01,4,28.4\nP1,left,2025-01-01,8,30.1\n"},
      {"reactions.csv",
       "patient_ref,side,began_on,ended_on,signs,note\n"
       "P1,left,2025-02-01,2025-02-09,itching;redness,after a hot day\nP1,,2025-08-01,,rash,\n"},
      {"issued.csv",
       "patient_ref,side,item_code,lot,serial,issued_on,ended_on,end_reason,share\n"
       "P1,left,LN-1,L7,S1,2025-01-05,2025-07-05,hole,\n"
       "P1,left,LN-1,L8,S2,2025-07-05,,,0.5\n"
       "P1,left,SK-1,,,2025-01-05,,,\nP1,left,SK-1,,,2025-01-05,,,\nP1,left,SK-1,,,2025-01-05,,,"
       "\n"},
      {"stock.csv",
       "item_code,lot,use_by,quantity,place\n"
       "LN-1,L9,2027-01-31,2,main store\nLN-1,L9,2027-01-31,1,main store\nSK-1,,,12,\n"},
      {"orders.csv",
       "supplier,order_ref,item_code,ordered_on,quantity,unit_cost,received_on,received_quantity\n"
       "Nordpol Teile,O-1,LN-1,2025-01-01,5,95.00,2025-01-15,\n"
       "Nordpol Teile,O-2,LN-1,2025-06-01,2,100,,\nNordpol Teile,O-2,LN-1,2025-06-01,1,100,,\n"},
      {"claims.csv",
       "claim_ref,patient_ref,side,service_date,code,modifiers,quantity,charge\n"
       "C-1,P1,left,2025-01-05,L5679,LT;KX,1,500\n"},
      {"invoices.csv",
       "supplier,invoice_ref,order_ref,item_code,quantity,unit_cost,invoiced_on\n"
       "Nordpol Teile,I-1,O-1,LN-1,5,95.00,2025-01-20\n"},
      {"codes.csv",
       "list,code,description,unit,valid_from,valid_to,source\n"
       "TEST,Z0001,Locking liner,each,2025-01-01,,invented\n"},
      {"payer_rules.csv",
       "payer,code,rule,number,days,amount,words,source\n"
       "Kasse,Z0001,at once,2,,,,invented\nKasse,Z0001,fee,,,480.00,,invented\n"},
      {"papers.csv",
       "patient_ref,side,item_code,lot,serial,issued_on,paper,dated_on,words,noted_by\n"
       "P1,left,LN-1,L8,S2,2025-07-05,reason,2025-07-05,torn at the trim line,Anna\n"}};
  return files;
}

inline void write_full_folder(const ClinicFolder& folder) {
  for (const auto& [name, text] : full_folder()) folder.write(name, text);
}

inline Date import_day() {
  return make_date(2026, 11, 25);
}

/// A new, empty database in memory.
inline std::unique_ptr<store::Store> empty_store() {
  return store::open_in_memory([] { return std::chrono::system_clock::time_point{import_day()}; });
}

inline desk::ImportReport import(store::Store& store, const std::filesystem::path& folder,
                                 desk::ImportOptions options = {}) {
  if (options.today == Date{}) options.today = import_day();
  return desk::import_folder(store, folder, {"tester", "import"}, options);
}

/// The report of one file, which must be there.
inline desk::FileReport report_of(const desk::ImportReport& report, const std::string& file) {
  for (const auto& entry : report.files) {
    if (entry.file == file) return entry;
  }
  throw std::logic_error("no report of " + file);
}

/// "file line column: reason" of the refused rows.
inline std::vector<std::string> refusals(const desk::ImportReport& report) {
  std::vector<std::string> made;
  for (const auto& row : report.refused) {
    made.push_back(row.file + " " + std::to_string(row.line) + " " + row.column + ": " +
                   row.reason);
  }
  return made;
}

inline std::size_t change_count(store::Store& store) {
  return store.read()->changes(1'000'000).size();
}

/// True when both hold the same records, in any order.
inline bool same_clinic(const Clinic& a, const Clinic& b) {
  const auto same = [](const auto& x, const auto& y) {
    return std::is_permutation(x.begin(), x.end(), y.begin(), y.end());
  };
  return same(a.suppliers, b.suppliers) && same(a.items, b.items) && same(a.patients, b.patients) &&
         same(a.prostheses, b.prostheses) && same(a.usage, b.usage) &&
         same(a.sensitivities, b.sensitivities) && same(a.measurements, b.measurements) &&
         same(a.reactions, b.reactions) && same(a.units, b.units) && same(a.shelf, b.shelf) &&
         same(a.order_lines, b.order_lines) && same(a.claim_lines, b.claim_lines) &&
         same(a.invoice_lines, b.invoice_lines) && same(a.billing_codes, b.billing_codes) &&
         same(a.payer_rules, b.payer_rules) && same(a.part_papers, b.part_papers);
}

}  // namespace sparewell::test
