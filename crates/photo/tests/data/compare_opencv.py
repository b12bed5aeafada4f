"""Our squaring beside OpenCV's (pip install numpy opencv-python-headless; Apache-2.0 and BSD).

    python compare_opencv.py data            writes homographies.csv, photo.ppm and warped.ppm beside this file
    python compare_opencv.py time BINARY     times the same 12-megapixel warp with both, one thread each
                                             (BINARY: target/release/examples/warp)

OpenCV calls the middle of the first pixel 0; Octavo calls it 0.5. Everything here is drawn from a seed.
"""
import pathlib, subprocess, sys, time
import cv2, numpy as np

HERE = pathlib.Path(__file__).parent
FLAT = np.float64([[0, 0], [1, 0], [1, 1], [0, 1]])

def ppm(path, rgb):
    path.write_bytes(b"P6\n%d %d\n255\n" % (rgb.shape[1], rgb.shape[0]) + rgb.tobytes())

def picture(rng, w, h, blur):
    rgb = cv2.GaussianBlur(rng.uniform(0, 255, (h, w, 3)), (0, 0), blur)
    rgb = (rgb - rgb.min()) / (rgb.max() - rgb.min()) * 255
    return np.ascontiguousarray(rgb.round().astype(np.uint8))

def warped(rgb, corners, w, h, flag):
    half = np.float32(corners) - 0.5
    to = np.float32([[-.5, -.5], [w - .5, -.5], [w - .5, h - .5], [-.5, h - .5]])
    m = cv2.getPerspectiveTransform(half, to)
    return cv2.warpPerspective(rgb, m, (w, h), flags=flag, borderMode=cv2.BORDER_REPLICATE)

def data():
    rng = np.random.default_rng(6)
    rows = ["# Where OpenCV %s carries nine places of a 1000 x 800 picture for 60 random quadrilaterals (compare_opencv.py, seed 6)." % cv2.__version__]
    for _ in range(60):
        quad = FLAT * [3000, 2200] + [500, 400] + rng.uniform(-400, 400, (4, 2))
        m = cv2.getPerspectiveTransform(np.float32(FLAT * [1000, 800]), np.float32(quad))
        quad = np.float32(quad).astype(np.float64)
        places = np.float64([[x, y] for y in (0, 333, 800) for x in (0, 417, 1000)])
        seen = cv2.perspectiveTransform(places[None], m)[0]
        rows.append(",".join("%.6f" % v for v in [*quad.ravel(), *seen.ravel()]))
    (HERE / "homographies.csv").write_text("\n".join(rows) + "\n")
    rgb = picture(rng, 120, 90, 1.5)
    ppm(HERE / "photo.ppm", rgb)
    ppm(HERE / "warped.ppm", warped(rgb, [[20, 9], [104, 15], [99, 80], [12, 72]], 90, 72, cv2.INTER_CUBIC))

def timed(binary):
    cv2.setNumThreads(1)
    rng = np.random.default_rng(7)
    w, h = 4000, 3000
    rgb = picture(rng, w, h, 2.0)
    corners = [[420, 310], [3610, 240], [3790, 2760], [250, 2640]]
    src, out = pathlib.Path("/tmp/octavo-warp-in.ppm"), pathlib.Path("/tmp/octavo-warp-out.ppm")
    ppm(src, rgb)
    for size in (3464, 2400):
        best = 1e9
        for _ in range(6):
            start = time.perf_counter()
            theirs = warped(rgb, corners, size, size, cv2.INTER_CUBIC)
            best = min(best, (time.perf_counter() - start) * 1000)
        ours = float(subprocess.check_output([binary, src, out, str(size), str(size), *(str(v) for c in corners for v in c)]))
        mine = np.frombuffer(out.read_bytes()[-size * size * 3:], np.uint8).reshape(size, size, 3)
        mse = np.mean((mine.astype(float) - theirs) ** 2)
        print(f"{size} x {size}: OpenCV {cv2.__version__} cubic {best:.0f} ms, ours {ours:.0f} ms, ratio {ours / best:.2f}, PSNR between {10 * np.log10(255 ** 2 / mse):.1f} dB")

if sys.argv[1] == "data":
    data()
else:
    timed(sys.argv[2])
