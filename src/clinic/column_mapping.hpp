/// How the columns of somebody else's table are read, saved under a name.
#pragma once

#include <string>
#include <vector>

namespace sparewell {

struct ColumnMapping {
  std::string name;                  ///< given by the clinic
  std::string target;                ///< "claims" or "remittance"
  std::vector<std::string> columns;  ///< "service_date=Date of service": our field, their column
  std::string date_pattern;          ///< "" for ISO 8601
  std::string decimal_sign = ".";

  friend bool operator==(const ColumnMapping&, const ColumnMapping&) = default;
};

}  // namespace sparewell
