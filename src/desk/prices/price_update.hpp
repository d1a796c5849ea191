/// A supplier's price list beside the catalogue, and taking it over.
#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "desk/prices/price_list_file.hpp"
#include "store/port.hpp"

namespace sparewell::desk {

struct PriceListRequest {
  std::filesystem::path file;
  std::string sheet;  ///< "" for the first
  SupplierName supplier;
  std::map<std::string, std::string> columns;  ///< field and heading, see read_price_list
  exchange::FolderFormat format;               ///< of CSV text
  bool take_descriptions = false;
};

enum class PriceAcceptance {
  nothing,      ///< only show
  sure,         ///< write what is not doubtful
  doubtful_too  ///< a person has looked at the doubtful prices
};

struct PriceListOutcome {
  std::string file;
  std::vector<std::string> ignored;  ///< headings
  supply::PriceComparison found;     ///< with the rows that could not be read
  int written = 0;
  int held_back = 0;  ///< doubtful, and therefore not written
};

/// Reads the list, compares it with the catalogue, and writes what is accepted, all in one unit of
/// work; the change log keeps the old values. Refuses in one sentence: a supplier that is not
/// known, a file that cannot be read. Throws store::StoreFailure, and then nothing is written.
[[nodiscard]] Expected<PriceListOutcome> update_prices(store::Store& store,
                                                       const PriceListRequest& request,
                                                       PriceAcceptance acceptance,
                                                       const std::string& who);

}  // namespace sparewell::desk
