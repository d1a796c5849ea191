/// Who changed what, when and why: one change set for each unit of work that writes.
#pragma once

#include <optional>
#include <vector>

#include <nlohmann/json.hpp>

#include "store/port.hpp"
#include "store/sqlite/connection.hpp"

namespace sparewell::store::sqlite {

/// Writes the entries of one unit of work.
class ChangeLog {
 public:
  ChangeLog(Connection& connection, Author author, Clock clock);

  void added(std::string_view record_kind, std::int64_t row);
  void changed(std::string_view record_kind, std::int64_t row,
               const nlohmann::ordered_json& before);
  /// The row of this unit of work's change set, made at its first use.
  [[nodiscard]] std::int64_t change_set();

 private:
  void write(std::string_view record_kind, std::int64_t row, const char* action,
             const std::string& before);

  Connection* connection_;
  Author author_;
  Clock clock_;
  std::optional<std::int64_t> set_;
};

/// The newest `most` entries, newest first.
[[nodiscard]] std::vector<Change> newest_changes(Connection& connection, int most);

}  // namespace sparewell::store::sqlite
