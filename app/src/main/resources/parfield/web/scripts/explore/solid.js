// Tank, fixtures and light in three dimensions: slices and a surface of equal PPFD.
import { colour } from './colours.js';
import { figures, filled, filledVolume, plane, section } from './light.js';
import { rocksInWords } from './rocks.js';

/** The view; {update(volume, rig, depth, look)} draws it anew. Says so where there is no WebGL. */
export function solid(root, scene) {
  const canvas = root.querySelector('[data-view="solid"]');
  const told = root.querySelector('[data-solid-told]');
  const level = root.querySelector('#level');
  const slices = root.querySelector('#slices');
  let last = null;
  let three = null;
  import('/libraries/three.module.min.js').then(THREE => {
    try {
      three = build(THREE, canvas, scene);
    } catch (problem) {
      told.textContent = 'This browser shows no 3-D here (no WebGL). The pictures above hold the same light.';
      canvas.hidden = true;
      return;
    }
    show();
  });
  const show = () => {
    if (three && last) {
      const top = last.look.scale.high;
      if (level.max !== String(top)) {
        level.max = top;
        level.step = Math.max(1, Math.round(top / 100));
        level.value = 1.3 * figures(last.volume.values).mean;
      }
      root.querySelector('[data-level]').textContent = level.value;
      const words = three(last.volume, last.rig, last.depth, last.look, +level.value, slices.checked);
      canvas.setAttribute('aria-label', words);
      told.textContent = words;
    }
  };
  level.addEventListener('input', show);
  slices.addEventListener('change', show);
  return {
    update(volume, rig, depth, look) {
      last = { volume, rig, depth, look };
      show();
    },
  };
}

function build(THREE, canvas, scene) {
  const { length, width, depth: deep } = scene.tank;
  const renderer = new THREE.WebGLRenderer({ canvas, antialias: true, alpha: true });
  const world = new THREE.Scene();
  const camera = new THREE.PerspectiveCamera(38, 1, 0.01, 30);
  world.add(new THREE.HemisphereLight(0xffffff, 0x445566, 2.2));
  const lamp = new THREE.DirectionalLight(0xffffff, 1.4);
  lamp.position.set(1, 3, 2);
  world.add(lamp);
  // Page axes: x to the right, y up (depth runs down), z toward the person at the front pane.
  const spot = (x, y, depth) => new THREE.Vector3(x - length / 2, deep / 2 - depth, width / 2 - y);
  const glass = new THREE.LineSegments(
    new THREE.EdgesGeometry(new THREE.BoxGeometry(length, deep, width)),
    new THREE.LineBasicMaterial({ color: 0x6f7c82 }));
  world.add(glass);
  const stone = new THREE.MeshLambertMaterial({ color: 0x8d8780, side: THREE.DoubleSide });
  const ink = new THREE.LineBasicMaterial({ color: 0x3a3631 });
  for (const rock of scene.rocks) {
    const body = new THREE.Group();
    if (rock.kind === 'mesh') {
      const points = new Float32Array(rock.triangles.length);
      for (let i = 0; i < points.length; i += 3) {
        points.set(spot(...[0, 1, 2].map(k => rock.triangles[i + k] / 10_000)).toArray(), i);
      }
      const shape = new THREE.BufferGeometry();
      shape.setAttribute('position', new THREE.BufferAttribute(points, 3));
      shape.computeVertexNormals();
      body.add(new THREE.Mesh(shape, stone));
    } else {
      const [along, across, high] = rock.size;
      const shape = rock.kind === 'box' ? new THREE.BoxGeometry(along, high, across) : new THREE.SphereGeometry(0.5, 48, 32).scale(along, high, across);
      body.add(new THREE.Mesh(shape, stone));
      if (rock.kind === 'box') {
        body.add(new THREE.LineSegments(new THREE.EdgesGeometry(shape), ink));
      }
      body.position.copy(spot((rock.x[0] + rock.x[1]) / 2, (rock.y[0] + rock.y[1]) / 2, (rock.depth[0] + rock.depth[1]) / 2));
      body.rotation.y = rock.yaw;
    }
    world.add(body);
  }
  const rocks = scene.rocks.length ? ` Rocks: ${rocksInWords(scene)}.` : '';
  const changing = new THREE.Group();
  world.add(changing);

  const eye = { around: 0.5, up: 0.35, far: 1.6 * Math.max(length, deep, width) };
  const draw = () => {
    const wide = Math.max(240, canvas.closest('.sheet').clientWidth - 32);
    const high = Math.min(460, wide * 0.7);
    renderer.setPixelRatio(devicePixelRatio || 1);
    renderer.setSize(wide, high, true);
    camera.aspect = wide / high;
    camera.updateProjectionMatrix();
    camera.position.set(
      eye.far * Math.sin(eye.around) * Math.cos(eye.up),
      eye.far * Math.sin(eye.up),
      eye.far * Math.cos(eye.around) * Math.cos(eye.up));
    camera.lookAt(0, 0, 0);
    renderer.render(world, camera);
  };
  const turn = (around, up, far = 1) => {
    eye.around += around;
    eye.up = Math.max(-1.4, Math.min(1.4, eye.up + up));
    eye.far = Math.max(0.4, Math.min(12, eye.far * far));
    draw();
  };
  canvas.addEventListener('pointermove', event => {
    if (event.buttons & 1) {
      turn(-event.movementX / 150, event.movementY / 150);
    }
  });
  canvas.addEventListener('keydown', event => {
    const by = {
      ArrowLeft: [-0.1, 0], ArrowRight: [0.1, 0], ArrowUp: [0, 0.1], ArrowDown: [0, -0.1],
      '+': [0, 0, 0.9], '-': [0, 0, 1.1],
    }[event.key];
    if (by) {
      event.preventDefault();
      turn(...by);
    }
  });
  addEventListener('resize', draw);

  return (volume, rig, depth, look, level, slices) => {
    for (const old of [...changing.children]) {
      changing.remove(old);
      old.geometry.dispose();
      old.material.map?.dispose();
      old.material.dispose();
    }
    for (const hanging of rig.hangings) {
      const fixture = scene.fixtures[hanging.fixture];
      const body = new THREE.Mesh(
        new THREE.BoxGeometry(Math.max(0.05, fixture.length), 0.02, Math.max(0.05, fixture.width)),
        new THREE.MeshLambertMaterial({ color: 0x30393d }));
      body.position.copy(spot(hanging.x, hanging.y, -hanging.height));
      body.rotation.set(hanging.tilt ?? 0, hanging.yaw ?? 0, 0, 'YXZ');
      changing.add(body);
    }
    if (slices) {
      const flat = slice(THREE, filled(plane(volume.values, volume.lattice, depth / deep)), length, width, look, true);
      flat.rotation.x = -Math.PI / 2;
      flat.position.copy(spot(length / 2, width / 2, depth));
      const upright = slice(THREE, filled(section(volume.values, volume.lattice)), length, deep, look, false);
      changing.add(flat, upright);
    }
    const corners = surface(filledVolume(volume), level);
    if (corners.length) {
      const { columns, rows, layers } = volume.lattice;
      const points = new Float32Array(corners.length);
      for (let i = 0; i < corners.length; i += 3) {
        const at = spot(
          ((corners[i] + 0.5) / columns) * length, ((corners[i + 1] + 0.5) / rows) * width, ((corners[i + 2] + 0.5) / layers) * deep);
        points.set([at.x, at.y, at.z], i);
      }
      const shape = new THREE.BufferGeometry();
      shape.setAttribute('position', new THREE.BufferAttribute(points, 3));
      shape.computeVertexNormals();
      const [r, g, b] = colour(look.map, level / look.scale.high);
      changing.add(new THREE.Mesh(shape, new THREE.MeshLambertMaterial({
        color: new THREE.Color(r / 255, g / 255, b / 255), side: THREE.DoubleSide, transparent: true, opacity: 0.55, depthWrite: false,
      })));
    }
    draw();
    let above = 0;
    let all = 0;
    for (const value of volume.values) {
      if (!Number.isNaN(value)) {
        all++;
        above += value >= level ? 1 : 0;
      }
    }
    return `The surface encloses the ${(100 * above / all).toFixed(0)} % of the water with ${level} µmol m⁻² s⁻¹ or more.${rocks}`;
  };
}

function slice(THREE, of, wide, high, look, upward) {
  const data = new Uint8Array(4 * of.columns * of.rows);
  for (let j = 0; j < of.rows; j++) {
    for (let i = 0; i < of.columns; i++) {
      const value = of.values[(upward ? j : of.rows - 1 - j) * of.columns + i];
      data.set([...colour(look.map, Number.isNaN(value) ? 0 : value / look.scale.high), 235], 4 * (j * of.columns + i));
    }
  }
  const texture = new THREE.DataTexture(data, of.columns, of.rows);
  texture.colorSpace = THREE.SRGBColorSpace;
  texture.magFilter = THREE.LinearFilter;
  texture.needsUpdate = true;
  return new THREE.Mesh(
    new THREE.PlaneGeometry(wide, high),
    new THREE.MeshBasicMaterial({ map: texture, side: THREE.DoubleSide, transparent: true, opacity: 0.85 }));
}

// A cube cut into six tetrahedra about its main diagonal.
const corners = [[0, 0, 0], [1, 0, 0], [0, 1, 0], [1, 1, 0], [0, 0, 1], [1, 0, 1], [0, 1, 1], [1, 1, 1]];
const tetrahedra = [[0, 1, 3, 7], [0, 3, 2, 7], [0, 2, 6, 7], [0, 6, 4, 7], [0, 4, 5, 7], [0, 5, 1, 7]];

/** Corners of the triangles of a surface of equal value, in cells: marching tetrahedra. */
export function surface({ values, lattice }, level) {
  const { columns, rows, layers } = lattice;
  const out = [];
  const v = new Float64Array(8);
  for (let k = 0; k < layers - 1; k++) {
    for (let j = 0; j < rows - 1; j++) {
      for (let i = 0; i < columns - 1; i++) {
        let some = 0;
        for (let c = 0; c < 8; c++) {
          const [x, y, z] = corners[c];
          const value = values[((k + z) * rows + j + y) * columns + i + x];
          v[c] = Number.isNaN(value) ? 0 : value;
          some += v[c] >= level ? 1 : 0;
        }
        if (some === 0 || some === 8) {
          continue;
        }
        for (const four of tetrahedra) {
          const inside = four.filter(c => v[c] >= level);
          const outside = four.filter(c => v[c] < level);
          if (inside.length === 1 || inside.length === 3) {
            const [lone, rest] = inside.length === 1 ? [inside[0], outside] : [outside[0], inside];
            rest.forEach(c => cut(lone, c, i, j, k));
          } else if (inside.length === 2) {
            const [a, b] = inside;
            const [c, d] = outside;
            cut(a, c, i, j, k);
            cut(a, d, i, j, k);
            cut(b, c, i, j, k);
            cut(b, c, i, j, k);
            cut(a, d, i, j, k);
            cut(b, d, i, j, k);
          }
        }
      }
    }
  }
  return out;

  function cut(a, b, i, j, k) {
    const t = (level - v[a]) / (v[b] - v[a]);
    out.push(
      i + corners[a][0] + t * (corners[b][0] - corners[a][0]),
      j + corners[a][1] + t * (corners[b][1] - corners[a][1]),
      k + corners[a][2] + t * (corners[b][2] - corners[a][2]));
  }
}
