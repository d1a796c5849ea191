#include "store/trial.hpp"

#include "clinic/say.hpp"
#include "store/sqlite/copy.hpp"
#include "store/sqlite/failure.hpp"
#include "store/sqlite/file_check.hpp"
#include "store/sqlite/open_with.hpp"
#include "store/sqlite/store.hpp"

namespace sparewell::store {

std::unique_ptr<Store> copy_in_memory(const std::string& path, Clock clock) {
  const auto migrations = sqlite::our_migrations();
  const auto our_version = sqlite::last_version(migrations);
  if (sqlite::look_at(path, our_version) != sqlite::FileState::clinic_file) {
    throw StoreFailure{
        StoreError::cannot_open,
        say("There is no clinic file at {}; check the name, or make a new one.", path)};
  }
  return sqlite::translated([&] {
    auto writer = std::make_unique<sqlite::Connection>(":memory:", sqlite::Use::write);
    {
      sqlite::Connection source{path, sqlite::Use::read};
      sqlite::copy_into(source, *writer);
    }
    sqlite::migrate(*writer, migrations);
    return sqlite::make_store(
        {"", std::move(writer), std::move(clock), sqlite::usual_busy_timeout, our_version});
  });
}

}  // namespace sparewell::store
