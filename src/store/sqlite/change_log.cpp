#include "store/sqlite/change_log.hpp"

#include <algorithm>

#include <SQLiteCpp/Column.h>
#include <fmt/chrono.h>

namespace sparewell::store::sqlite {
namespace {

std::string utc_text(std::chrono::system_clock::time_point moment) {
  const auto seconds = std::chrono::floor<std::chrono::seconds>(moment);
  return fmt::format("{:%Y-%m-%dT%H:%M:%SZ}",
                     fmt::gmtime(std::chrono::system_clock::to_time_t(seconds)));
}

}  // namespace

ChangeLog::ChangeLog(Connection& connection, Author author, Clock clock)
    : connection_{&connection}, author_{std::move(author)}, clock_{std::move(clock)} {}

std::int64_t ChangeLog::change_set() {
  if (!set_) {
    const auto query =
        connection_->query("INSERT INTO change_sets (who, at, why) VALUES (:who, :at, :why)");
    query->bind(":who", author_.who);
    query->bind(":at", utc_text(clock_()));
    query->bind(":why", author_.why);
    query->exec();
    set_ = connection_->database().getLastInsertRowid();
  }
  return *set_;
}

void ChangeLog::added(std::string_view record_kind, std::int64_t row) {
  write(record_kind, row, "added", "");
}

void ChangeLog::changed(std::string_view record_kind, std::int64_t row,
                        const nlohmann::ordered_json& before) {
  // A text that is not valid UTF-8 must not stop the log.
  using Dump = nlohmann::ordered_json::error_handler_t;
  write(record_kind, row, "changed", before.dump(-1, ' ', false, Dump::replace));
}

void ChangeLog::write(std::string_view record_kind, std::int64_t row, const char* action,
                      const std::string& before) {
  static const std::string sql =
      "INSERT INTO changes (change_set_id, record_kind, row_id, action, before)"
      " VALUES (:change_set_id, :record_kind, :row_id, :action, :before)";
  const auto set = change_set();
  const auto query = connection_->query(sql);
  query->bind(":change_set_id", set);
  query->bind(":record_kind", std::string{record_kind});
  query->bind(":row_id", row);
  query->bind(":action", action);
  query->bind(":before", before);
  query->exec();
}

std::vector<Change> newest_changes(Connection& connection, int most) {
  static const std::string sql =
      "SELECT who, at, why, record_kind, row_id, action, before"
      " FROM changes JOIN change_sets ON change_sets.id = change_set_id"
      " ORDER BY changes.id DESC LIMIT :most";
  const auto query = connection.query(sql);
  query->bind(":most", std::max(most, 0));
  std::vector<Change> changes;
  while (query->executeStep()) {
    Change change;
    change.who = query->getColumn(0).getString();
    change.at = query->getColumn(1).getString();
    change.why = query->getColumn(2).getString();
    change.record_kind = query->getColumn(3).getString();
    change.row.value = query->getColumn(4).getInt64();
    change.action = query->getColumn(5).getString();
    change.before = query->getColumn(6).getString();
    changes.push_back(std::move(change));
  }
  return changes;
}

}  // namespace sparewell::store::sqlite
