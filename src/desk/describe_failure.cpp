#include "desk/describe_failure.hpp"

#include <filesystem>
#include <new>

#include "clinic/say.hpp"
#include "store/port.hpp"

namespace sparewell::desk {
namespace {

std::string advice(store::StoreError error) {
  using store::StoreError;
  switch (error) {
    case StoreError::busy:
      return said(" Nothing was changed; try again in a moment.");
    case StoreError::conflict:
      return said(" Nothing was changed; refresh (F5) and look again.");
    case StoreError::disk_full:
      return said(" Nothing was changed; make room on the disk and try again.");
    case StoreError::corrupt:
      return said(" Do not go on working with this file; restore the latest backup.");
    case StoreError::outcome_unknown:
      return said(" Refresh (F5) to see whether it was kept before you repeat it.");
    default:
      return "";
  }
}

}  // namespace

std::string describe_failure(const std::exception_ptr& failure) {
  try {
    std::rethrow_exception(failure);
  } catch (const store::StoreFailure& store) {
    return store.what() + advice(store.error());
  } catch (const std::filesystem::filesystem_error& file) {
    return say("{} cannot be used: {}.", file.path1().string(), file.code().message());
  } catch (const std::bad_alloc&) {
    return said("There is not enough memory for this. Close other programs and try again.");
  } catch (const std::exception& other) {
    return other.what();
  } catch (...) {
    return said("Something failed without saying why.");
  }
}

}  // namespace sparewell::desk
